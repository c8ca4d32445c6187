BEGIN TRANSACTION;
CREATE TABLE alembic_version (version_num VARCHAR(32) NOT NULL, CONSTRAINT alembic_version_pkc PRIMARY KEY (version_num));
INSERT INTO "alembic_version" VALUES('0022');
CREATE TABLE assigned_part (
	id TEXT NOT NULL, 
	version INTEGER DEFAULT 1 NOT NULL, 
	opening_id TEXT NOT NULL, 
	lock_point_id TEXT, 
	role TEXT NOT NULL, 
	part TEXT NOT NULL, 
	piece INTEGER NOT NULL, 
	quantity FLOAT NOT NULL, 
	source TEXT NOT NULL, 
	serial TEXT, 
	lot TEXT, 
	state TEXT NOT NULL, 
	CONSTRAINT pk_assigned_part PRIMARY KEY (id), 
	CONSTRAINT fk_assigned_part_opening_id FOREIGN KEY(opening_id) REFERENCES opening (id), 
	CONSTRAINT fk_assigned_part_lock_point_id FOREIGN KEY(lock_point_id) REFERENCES lock_point (id)
);
INSERT INTO "assigned_part" VALUES('c04089e0f95d4e22b4af2cb333c476e0',1,'1616b6333a7f40fc901d066235230f53','1616b6333a7f40fc901d066235230f53','cylinder','C-1',1,1.0,'by-hand','SN-1',NULL,'planned');
CREATE TABLE attachment (
	id TEXT NOT NULL, 
	version INTEGER DEFAULT 1 NOT NULL, 
	entity TEXT NOT NULL, 
	row_id TEXT NOT NULL, 
	opening_id TEXT, 
	blob TEXT NOT NULL, 
	name TEXT NOT NULL, 
	title TEXT, 
	note TEXT, 
	ordinal INTEGER DEFAULT 0 NOT NULL, 
	CONSTRAINT pk_attachment PRIMARY KEY (id), 
	CONSTRAINT fk_attachment_opening_id FOREIGN KEY(opening_id) REFERENCES opening (id), 
	CONSTRAINT fk_attachment_blob FOREIGN KEY(blob) REFERENCES blob (hash)
);
INSERT INTO "attachment" VALUES('291897aff439462f8b867ca59c12fdfd',1,'opening','1616b6333a7f40fc901d066235230f53','1616b6333a7f40fc901d066235230f53','508b7b1f113fdf173660d2b3dace45039a6d28f00ee27382c04c93af8213e4c9','inside.txt','Inside',NULL,0);
CREATE TABLE blob (
	hash TEXT NOT NULL, 
	size INTEGER NOT NULL, 
	media_type TEXT NOT NULL, 
	content BLOB NOT NULL, 
	CONSTRAINT pk_blob PRIMARY KEY (hash)
);
INSERT INTO "blob" VALUES('c7833160c63da29c02cf51b6bb898cf53137ae144cebfe2d8ecece1de0d67699',14,'text/plain',X'61732069742077656E74206F7574');
INSERT INTO "blob" VALUES('508b7b1f113fdf173660d2b3dace45039a6d28f00ee27382c04c93af8213e4c9',16,'text/plain',X'7365656E2066726F6D20696E73696465');
CREATE TABLE building (
	id TEXT NOT NULL, 
	version INTEGER DEFAULT 1 NOT NULL, 
	name TEXT NOT NULL, 
	code TEXT, 
	code_edition INTEGER, 
	occupancy_group TEXT, 
	occupant_load INTEGER, 
	storeys_served INTEGER, 
	sprinkler BOOLEAN, 
	fire_alarm BOOLEAN, 
	access_policy TEXT, 
	CONSTRAINT pk_building PRIMARY KEY (id), 
	CONSTRAINT uq_building_name UNIQUE (name)
);
INSERT INTO "building" VALUES('e9147bacfdb844b5838abccc96ee400d',2,'Mill',NULL,NULL,'B',NULL,NULL,0,NULL,NULL);
CREATE TABLE change_entry (
	change_set INTEGER NOT NULL, 
	sequence INTEGER NOT NULL, 
	entity TEXT NOT NULL, 
	row_id TEXT NOT NULL, 
	opening_id TEXT, 
	action TEXT NOT NULL, 
	"before" TEXT, 
	"after" TEXT, 
	origin TEXT, 
	CONSTRAINT pk_change_entry PRIMARY KEY (change_set, sequence), 
	CONSTRAINT fk_change_entry_change_set FOREIGN KEY(change_set) REFERENCES change_set (number)
);
INSERT INTO "change_entry" VALUES(1,0,'part','5a45736ebf28493e90e03ab7018be3aa',NULL,'insert',NULL,'{"currency":"USD","id":"5a45736ebf28493e90e03ab7018be3aa","kind":"mortise-cylinder","list_price":"12.1","number":"C-1","unit":"EA","version":1}','test');
INSERT INTO "change_entry" VALUES(1,1,'part','80ec009d1c9d4de1b6b8322a0a7f6089',NULL,'insert',NULL,'{"id":"80ec009d1c9d4de1b6b8322a0a7f6089","kind":"surface-unit","number":"U-1","unit":"EA","version":1}','test');
INSERT INTO "change_entry" VALUES(1,2,'kit_content','4441b1d275f4495b9c63deef2a6ea4f1',NULL,'insert',NULL,'{"id":"4441b1d275f4495b9c63deef2a6ea4f1","number":"S-1","part_id":"5a45736ebf28493e90e03ab7018be3aa","quantity":2.0,"version":1}','test');
INSERT INTO "change_entry" VALUES(2,0,'building','e9147bacfdb844b5838abccc96ee400d',NULL,'insert',NULL,'{"id":"e9147bacfdb844b5838abccc96ee400d","name":"Mill","version":1}',NULL);
INSERT INTO "change_entry" VALUES(2,1,'level','17f35040e9aa41c4b2378c9e84d340f7',NULL,'insert',NULL,'{"building_id":"e9147bacfdb844b5838abccc96ee400d","id":"17f35040e9aa41c4b2378c9e84d340f7","name":"1","sort":0,"version":1}',NULL);
INSERT INTO "change_entry" VALUES(2,2,'opening','1616b6333a7f40fc901d066235230f53','1616b6333a7f40fc901d066235230f53','insert',NULL,'{"id":"1616b6333a7f40fc901d066235230f53","level_id":"17f35040e9aa41c4b2378c9e84d340f7","mark":"0012","stair":true,"version":1}','added by keeper');
INSERT INTO "change_entry" VALUES(2,3,'leaf','468dd64e49c548a79249229aa9218bad','1616b6333a7f40fc901d066235230f53','insert',NULL,'{"id":"468dd64e49c548a79249229aa9218bad","opening_id":"1616b6333a7f40fc901d066235230f53","ordinal":0,"position":"active","version":1}','added by keeper');
INSERT INTO "change_entry" VALUES(2,4,'leaf','9cf334a07d2a4820810df808effb75d2','1616b6333a7f40fc901d066235230f53','insert',NULL,'{"id":"9cf334a07d2a4820810df808effb75d2","opening_id":"1616b6333a7f40fc901d066235230f53","ordinal":1,"position":"inactive","version":1}','added by keeper');
INSERT INTO "change_entry" VALUES(2,5,'lock_point','1616b6333a7f40fc901d066235230f53','1616b6333a7f40fc901d066235230f53','insert',NULL,'{"id":"1616b6333a7f40fc901d066235230f53","opening_id":"1616b6333a7f40fc901d066235230f53","version":1}',NULL);
INSERT INTO "change_entry" VALUES(3,0,'level','29cce2bbba6d422e80ec43f92826c382',NULL,'insert',NULL,'{"id":"29cce2bbba6d422e80ec43f92826c382","name":"roof","sort":1,"version":1}',NULL);
INSERT INTO "change_entry" VALUES(3,1,'opening','7672ad78a69c4b52a375b12424d4885d','7672ad78a69c4b52a375b12424d4885d','insert',NULL,'{"id":"7672ad78a69c4b52a375b12424d4885d","level_id":"29cce2bbba6d422e80ec43f92826c382","mark":"9E4","version":1}','added by keeper');
INSERT INTO "change_entry" VALUES(3,2,'leaf','8da387fe7e3349cb9af58f9705a956d4','7672ad78a69c4b52a375b12424d4885d','insert',NULL,'{"id":"8da387fe7e3349cb9af58f9705a956d4","opening_id":"7672ad78a69c4b52a375b12424d4885d","ordinal":0,"position":"single","version":1}','added by keeper');
INSERT INTO "change_entry" VALUES(3,3,'lock_point','7672ad78a69c4b52a375b12424d4885d','7672ad78a69c4b52a375b12424d4885d','insert',NULL,'{"id":"7672ad78a69c4b52a375b12424d4885d","opening_id":"7672ad78a69c4b52a375b12424d4885d","version":1}',NULL);
INSERT INTO "change_entry" VALUES(4,0,'existing_item','cd75a50db72a40208de44b127e57b51b','1616b6333a7f40fc901d066235230f53','insert',NULL,'{"backset_mm":69.85,"id":"cd75a50db72a40208de44b127e57b51b","kind":"lock","opening_id":"1616b6333a7f40fc901d066235230f53","ordinal":0,"version":1}','added by keeper');
INSERT INTO "change_entry" VALUES(4,1,'lock_point','1616b6333a7f40fc901d066235230f53','1616b6333a7f40fc901d066235230f53','update','{"item_id":null}','{"item_id":"cd75a50db72a40208de44b127e57b51b"}',NULL);
INSERT INTO "change_entry" VALUES(5,0,'chosen_part','c0b766a9fb45417ab3b4a77d5290546a','1616b6333a7f40fc901d066235230f53','insert',NULL,'{"id":"c0b766a9fb45417ab3b4a77d5290546a","lock_point_id":"1616b6333a7f40fc901d066235230f53","opening_id":"1616b6333a7f40fc901d066235230f53","part":"C-1","quantity":1.0,"role":"cylinder","version":1}',NULL);
INSERT INTO "change_entry" VALUES(6,0,'placed_unit','440707b1c2e44f01b761ccd29b47f8db','1616b6333a7f40fc901d066235230f53','insert',NULL,'{"face":"inside","id":"440707b1c2e44f01b761ccd29b47f8db","leaf":"active","lock_point_id":"1616b6333a7f40fc901d066235230f53","opening_id":"1616b6333a7f40fc901d066235230f53","pattern":"above","version":1,"x_mm":20.0,"y_mm":1100.0}',NULL);
INSERT INTO "change_entry" VALUES(7,0,'own_field','85fe4f6040b2463a96c9be3a1ff24bc6',NULL,'insert',NULL,'{"choices":["AA","BB"],"entity":"existing_item","id":"85fe4f6040b2463a96c9be3a1ff24bc6","kind":"choice","label":"Key group","name":"key_group","unit":"","version":1}',NULL);
INSERT INTO "change_entry" VALUES(8,0,'existing_item','cd75a50db72a40208de44b127e57b51b','1616b6333a7f40fc901d066235230f53','update','{"extra":{}}','{"extra":{"key_group":"AA"}}','edited by keeper');
INSERT INTO "change_entry" VALUES(9,0,'import_mapping','424e502987a54ea3ac5dcdd0bbcfd5ee',NULL,'insert',NULL,'{"fingerprint":"f","id":"424e502987a54ea3ac5dcdd0bbcfd5ee","mapping":{"Mark":"opening.mark"},"name":"Doors","version":1}',NULL);
INSERT INTO "change_entry" VALUES(10,0,'opening_fit','1616b6333a7f40fc901d066235230f53','1616b6333a7f40fc901d066235230f53','insert',NULL,'{"engine":"program","facts_read":"a5ca83876477bf081178c26357410b22","fit_key":"9f737a60efd3e7749fca3581fe60d2792f2094640b394a4735876f394448155a","id":"1616b6333a7f40fc901d066235230f53","input_key":"case","opening_id":"1616b6333a7f40fc901d066235230f53","version":1}',NULL);
INSERT INTO "change_entry" VALUES(11,0,'supply','2326656ef38f469e91ee90842969e3db',NULL,'insert',NULL,'{"id":"2326656ef38f469e91ee90842969e3db","name":"Closet","use":"laid","version":1,"x_m":2.5}',NULL);
INSERT INTO "change_entry" VALUES(11,1,'circuit','91f91a31869748ef8dbec3c9a193872c',NULL,'insert',NULL,'{"alarm":"drops","id":"91f91a31869748ef8dbec3c9a193872c","name":"A","supply_id":"2326656ef38f469e91ee90842969e3db","version":1}',NULL);
INSERT INTO "change_entry" VALUES(11,2,'run','0e203b9120ef4173a4cd1619973d3107',NULL,'insert',NULL,'{"circuit_id":"91f91a31869748ef8dbec3c9a193872c","from_node":"supply","id":"0e203b9120ef4173a4cd1619973d3107","to_node":"J1","version":1}',NULL);
INSERT INTO "change_entry" VALUES(11,3,'run','b411a2b74460425f83d64646d196ebda','1616b6333a7f40fc901d066235230f53','insert',NULL,'{"circuit_id":"91f91a31869748ef8dbec3c9a193872c","from_node":"J1","gauge":"18 AWG","id":"b411a2b74460425f83d64646d196ebda","length_m":4.0,"opening_id":"1616b6333a7f40fc901d066235230f53","stranding":"solid","to_node":"1616b6333a7f40fc901d066235230f53","version":1}',NULL);
INSERT INTO "change_entry" VALUES(11,4,'route','0cf65e7c03ca4e488e83f79fc1b5bb3a','1616b6333a7f40fc901d066235230f53','insert',NULL,'{"id":"0cf65e7c03ca4e488e83f79fc1b5bb3a","length_m":6.0,"opening_id":"1616b6333a7f40fc901d066235230f53","pinned":true,"supply_id":"2326656ef38f469e91ee90842969e3db","version":1}',NULL);
INSERT INTO "change_entry" VALUES(12,0,'hardware_set','f3037166891c44ea84eb04a57e9d55dc',NULL,'insert',NULL,'{"id":"f3037166891c44ea84eb04a57e9d55dc","name":"HS-1","version":1}',NULL);
INSERT INTO "change_entry" VALUES(12,1,'set_line','ade06cbad5f44d7eb5919de71275e5d6',NULL,'insert',NULL,'{"id":"ade06cbad5f44d7eb5919de71275e5d6","part":"U-1","quantity":1.0,"role":"unit","set_id":"f3037166891c44ea84eb04a57e9d55dc","version":1}',NULL);
INSERT INTO "change_entry" VALUES(12,2,'opening','1616b6333a7f40fc901d066235230f53','1616b6333a7f40fc901d066235230f53','update','{"set_id":null}','{"set_id":"f3037166891c44ea84eb04a57e9d55dc"}',NULL);
INSERT INTO "change_entry" VALUES(12,3,'waiver','7bb9698540644a5a802b200fdf749fda','1616b6333a7f40fc901d066235230f53','insert',NULL,'{"about":"","facts":"f","given_on":"2026-01-02","id":"7bb9698540644a5a802b200fdf749fda","opening_id":"1616b6333a7f40fc901d066235230f53","person":"keeper","reason":"seen","rule":"hand-known","scope":"opening","version":1}',NULL);
INSERT INTO "change_entry" VALUES(12,4,'issued_packet','5389cb6df13f4d049e2885880c70e909','1616b6333a7f40fc901d066235230f53','insert',NULL,'{"at":"2026-01-02","by":"keeper","id":"5389cb6df13f4d049e2885880c70e909","opening_id":"1616b6333a7f40fc901d066235230f53","shown_key":"case","version":1}',NULL);
INSERT INTO "change_entry" VALUES(13,0,'assigned_part','c04089e0f95d4e22b4af2cb333c476e0','1616b6333a7f40fc901d066235230f53','insert',NULL,'{"id":"c04089e0f95d4e22b4af2cb333c476e0","lock_point_id":"1616b6333a7f40fc901d066235230f53","opening_id":"1616b6333a7f40fc901d066235230f53","part":"C-1","piece":1,"quantity":1.0,"role":"cylinder","serial":"SN-1","source":"by-hand","state":"planned","version":1}',NULL);
INSERT INTO "change_entry" VALUES(14,0,'opening','2e7eeac9cc7c45019746d95bd41d584e','2e7eeac9cc7c45019746d95bd41d584e','insert',NULL,'{"id":"2e7eeac9cc7c45019746d95bd41d584e","level_id":"29cce2bbba6d422e80ec43f92826c382","mark":"W7","version":1}','added by keeper');
INSERT INTO "change_entry" VALUES(14,1,'leaf','18339d0e40e84e7cbb2853ee62ba38fc','2e7eeac9cc7c45019746d95bd41d584e','insert',NULL,'{"id":"18339d0e40e84e7cbb2853ee62ba38fc","opening_id":"2e7eeac9cc7c45019746d95bd41d584e","ordinal":0,"position":"single","version":1}','added by keeper');
INSERT INTO "change_entry" VALUES(14,2,'lock_point','2e7eeac9cc7c45019746d95bd41d584e','2e7eeac9cc7c45019746d95bd41d584e','insert',NULL,'{"id":"2e7eeac9cc7c45019746d95bd41d584e","opening_id":"2e7eeac9cc7c45019746d95bd41d584e","version":1}',NULL);
INSERT INTO "change_entry" VALUES(15,0,'opening','2e7eeac9cc7c45019746d95bd41d584e','2e7eeac9cc7c45019746d95bd41d584e','update','{"retired":null}','{"retired":"walled up"}',NULL);
INSERT INTO "change_entry" VALUES(16,0,'delivery','ad3ecb753f394a078d32644bcc53c008',NULL,'insert',NULL,'{"at":"2026-01-02","file":"doors.csv","id":"ad3ecb753f394a078d32644bcc53c008","key":"f","number":1,"person":"keeper","told":{"new":2},"version":1}',NULL);
INSERT INTO "change_entry" VALUES(16,1,'open_question','e7842791e9964f88802e16e625b1c0a6','1616b6333a7f40fc901d066235230f53','insert',NULL,'{"content":{"before":"LH"},"delivery_id":"ad3ecb753f394a078d32644bcc53c008","fact":"hand","id":"e7842791e9964f88802e16e625b1c0a6","kind":"blank","mark":"0012","opening_id":"1616b6333a7f40fc901d066235230f53","version":1}',NULL);
INSERT INTO "change_entry" VALUES(17,0,'transmittal','8ba2566e8c0346caa6f2d53208ecf905',NULL,'insert',NULL,'{"at":"2026-01-02","files":{"schedule.pdf":{"hash":"c7833160c63da29c02cf51b6bb898cf53137ae144cebfe2d8ecece1de0d67699","revision":"","size":14}},"id":"8ba2566e8c0346caa6f2d53208ecf905","number":1,"person":"keeper","purpose":"for approval","recipient":"Architect","version":1}',NULL);
INSERT INTO "change_entry" VALUES(18,0,'office','085a7ff36eae425cb73e3655b330f864',NULL,'insert',NULL,'{"id":"085a7ff36eae425cb73e3655b330f864","name":"office","text":"format = 1\npaper = \"a4\"\n","version":1}',NULL);
INSERT INTO "change_entry" VALUES(19,0,'building','e9147bacfdb844b5838abccc96ee400d',NULL,'update','{"occupancy_group":null,"sprinkler":null}','{"occupancy_group":"B","sprinkler":false}','edited by keeper');
INSERT INTO "change_entry" VALUES(20,0,'level','17f35040e9aa41c4b2378c9e84d340f7',NULL,'update','{"occupant_load":null}','{"occupant_load":40}','edited by keeper');
INSERT INTO "change_entry" VALUES(21,0,'opening','1616b6333a7f40fc901d066235230f53','1616b6333a7f40fc901d066235230f53','update','{"code_edition":null,"egress_toward":null}','{"code_edition":2021,"egress_toward":"key"}','edited by keeper');
INSERT INTO "change_entry" VALUES(22,0,'person','c4ed2d24319445f2961ec882ca98be2b',NULL,'insert',NULL,'{"id":"c4ed2d24319445f2961ec882ca98be2b","name":"keeper","role":"specifier","version":1}',NULL);
INSERT INTO "change_entry" VALUES(23,0,'attachment','291897aff439462f8b867ca59c12fdfd','1616b6333a7f40fc901d066235230f53','insert',NULL,'{"blob":"508b7b1f113fdf173660d2b3dace45039a6d28f00ee27382c04c93af8213e4c9","entity":"opening","id":"291897aff439462f8b867ca59c12fdfd","name":"inside.txt","opening_id":"1616b6333a7f40fc901d066235230f53","ordinal":0,"row_id":"1616b6333a7f40fc901d066235230f53","title":"Inside","version":1}','file inside.txt');
INSERT INTO "change_entry" VALUES(24,0,'opening_fit','7672ad78a69c4b52a375b12424d4885d','7672ad78a69c4b52a375b12424d4885d','insert',NULL,'{"engine":"43da2bfe67f668f9eb707f2ad1200c9f","facts_read":"84d8a6f668ce7b7e99626905490ca049","fit_key":"4d1a5b681209a263fbb5d5c98b568915f236ffecd8d4f070f0326407c934a9cc","id":"7672ad78a69c4b52a375b12424d4885d","input_key":"c3958cb63914e37cbb2515bb228775eff6bbdf3376a40d5a68374065f72a2b88","opening_id":"7672ad78a69c4b52a375b12424d4885d","version":1}',NULL);
INSERT INTO "change_entry" VALUES(25,0,'revision','c709228691f74c0a9b70fcf21a5c8e6f',NULL,'insert',NULL,'{"at":"2026-11-30T20:48:02+00:00","id":"c709228691f74c0a9b70fcf21a5c8e6f","letter":"A","person":"keeper","purpose":"kept","root":"d4aad842667a0756890fe0340f1b771c4fbdb13b073c2c10272ff520f495564f","version":1}',NULL);
INSERT INTO "change_entry" VALUES(26,0,'opening','1616b6333a7f40fc901d066235230f53','1616b6333a7f40fc901d066235230f53','update','{"hand":null}','{"hand":"LHR"}','edited by keeper');
INSERT INTO "change_entry" VALUES(27,0,'opening','1616b6333a7f40fc901d066235230f53','1616b6333a7f40fc901d066235230f53','update','{"hand":"LHR"}','{"hand":"RH"}','edited by keeper');
INSERT INTO "change_entry" VALUES(28,0,'opening','1616b6333a7f40fc901d066235230f53','1616b6333a7f40fc901d066235230f53','update','{"hand":"RH"}','{"hand":"LHR"}',NULL);
INSERT INTO "change_entry" VALUES(29,0,'opening','7672ad78a69c4b52a375b12424d4885d','7672ad78a69c4b52a375b12424d4885d','update','{"hand":null}','{"hand":"LH"}','edited by keeper');
INSERT INTO "change_entry" VALUES(30,0,'opening','7672ad78a69c4b52a375b12424d4885d','7672ad78a69c4b52a375b12424d4885d','update','{"hand":"LH"}','{"hand":"RH"}','edited by keeper');
INSERT INTO "change_entry" VALUES(31,0,'opening','7672ad78a69c4b52a375b12424d4885d','7672ad78a69c4b52a375b12424d4885d','update','{"hand":"RH"}','{"hand":"LH"}',NULL);
INSERT INTO "change_entry" VALUES(31,1,'opening','7672ad78a69c4b52a375b12424d4885d','7672ad78a69c4b52a375b12424d4885d','update','{"hand":"LH"}','{"hand":null}',NULL);
CREATE TABLE change_reference (
	row_id TEXT NOT NULL, 
	change_set INTEGER NOT NULL, 
	CONSTRAINT pk_change_reference PRIMARY KEY (row_id, change_set), 
	CONSTRAINT fk_change_reference_change_set FOREIGN KEY(change_set) REFERENCES change_set (number)
);
INSERT INTO "change_reference" VALUES('5a45736ebf28493e90e03ab7018be3aa',1);
INSERT INTO "change_reference" VALUES('17f35040e9aa41c4b2378c9e84d340f7',2);
INSERT INTO "change_reference" VALUES('e9147bacfdb844b5838abccc96ee400d',2);
INSERT INTO "change_reference" VALUES('29cce2bbba6d422e80ec43f92826c382',3);
INSERT INTO "change_reference" VALUES('cd75a50db72a40208de44b127e57b51b',4);
INSERT INTO "change_reference" VALUES('1616b6333a7f40fc901d066235230f53',5);
INSERT INTO "change_reference" VALUES('1616b6333a7f40fc901d066235230f53',6);
INSERT INTO "change_reference" VALUES('1616b6333a7f40fc901d066235230f53',10);
INSERT INTO "change_reference" VALUES('2326656ef38f469e91ee90842969e3db',11);
INSERT INTO "change_reference" VALUES('91f91a31869748ef8dbec3c9a193872c',11);
INSERT INTO "change_reference" VALUES('f3037166891c44ea84eb04a57e9d55dc',12);
INSERT INTO "change_reference" VALUES('1616b6333a7f40fc901d066235230f53',13);
INSERT INTO "change_reference" VALUES('29cce2bbba6d422e80ec43f92826c382',14);
INSERT INTO "change_reference" VALUES('ad3ecb753f394a078d32644bcc53c008',16);
INSERT INTO "change_reference" VALUES('1616b6333a7f40fc901d066235230f53',23);
INSERT INTO "change_reference" VALUES('7672ad78a69c4b52a375b12424d4885d',24);
CREATE TABLE change_set (
	number INTEGER NOT NULL, 
	uuid TEXT NOT NULL, 
	base INTEGER, 
	at TEXT NOT NULL, 
	who TEXT NOT NULL, 
	device TEXT, 
	session TEXT, 
	verb TEXT NOT NULL, 
	summary TEXT NOT NULL, 
	kind TEXT NOT NULL, 
	target INTEGER, 
	entries INTEGER NOT NULL, 
	own_hash TEXT, 
	chain_hash TEXT, 
	CONSTRAINT pk_change_set PRIMARY KEY (number), 
	CONSTRAINT uq_change_set_uuid UNIQUE (uuid), 
	CONSTRAINT fk_change_set_target FOREIGN KEY(target) REFERENCES change_set (number)
);
INSERT INTO "change_set" VALUES(1,'5eb1ff2d8d3548969e67a7b634eb8d13',0,'2026-11-30T20:47:58.400+00:00','keeper','vm','dc4bf27095cc48deaee611ef6d112e3b','import-catalogue','Catalogue','edit',NULL,3,'50ac8a870fc4801a563d44e9769a38094d1a76fc8a4cc78ae9a48d5559f53d36','960406d9d68e8d7fe18f7abe8b7fabf5d05907d7abda5712fe061af75d7ee55e');
INSERT INTO "change_set" VALUES(2,'72114b28581a40c5b3af0f665466a5d8',1,'2026-11-30T20:47:58.478+00:00','keeper','vm','dc4bf27095cc48deaee611ef6d112e3b','add-opening','Add opening 0012','edit',NULL,6,'18c40e784b16532a3f57e474454937e9d154ed493f9b5a83f80d45645756b60d','855378e46482fdeb11ee9e24cb6baddc1917e03f46e639de1acc158128af29c9');
INSERT INTO "change_set" VALUES(3,'cb00fd6933cd4c48b42ed6515ae2315f',2,'2026-11-30T20:47:58.519+00:00','keeper','vm','dc4bf27095cc48deaee611ef6d112e3b','add-opening','Add opening 9E4','edit',NULL,4,'d5ff8061bc49451fa8bb6f5c3978e2238cf5a845784732dcb7ffbca1f819d22f','a622885d6a5f90af9c68bda74a02d737e561fd18f28ac1aa5bfdab7489f48ef2');
INSERT INTO "change_set" VALUES(4,'cfd126c7326049ceab3d5d7101e5c47d',3,'2026-11-30T20:47:58.536+00:00','keeper','vm','dc4bf27095cc48deaee611ef6d112e3b','add-item','Add existing item lock to 0012','edit',NULL,2,'506664b3ddcf35374bb176fd6c339f848493bc6535377f603b51220f8a07040e','68927a535f546f0f3c1758478cab18f455b22e66fef6faec8f43665f5c54e3e9');
INSERT INTO "change_set" VALUES(5,'362d8dfec08a47d9808b9e787490e3cc',4,'2026-11-30T20:47:58.591+00:00','keeper','vm','dc4bf27095cc48deaee611ef6d112e3b','choose-part','Choose C-1 as cylinder of 0012','edit',NULL,1,'78211c45fd14122907eb259e76bbe7c0cd7a19f7e8facdd3ac7411486fa863e7','ca7cad5ff6a78bc3e618242d4b521281fe10c9b74ce2a9b884ba0d45ad94fbfd');
INSERT INTO "change_set" VALUES(6,'84b015b80dfb4a928a809c16449d821a',5,'2026-11-30T20:47:58.600+00:00','keeper','vm','dc4bf27095cc48deaee611ef6d112e3b','place-unit','Place the unit of 0012','edit',NULL,1,'05df2e7c961fbebabf0261a67b500be254f32a265ac5107cb0ae5221d34cb1c5','e1e316bb6c0b58945fbfeb807cde1b8217c503dfe3cb3fb821a14e7dd23a92e2');
INSERT INTO "change_set" VALUES(7,'717df19bea3140478f73bcf85c023b0c',6,'2026-11-30T20:47:58.611+00:00','keeper','vm','dc4bf27095cc48deaee611ef6d112e3b','define-field','Define field Key group','edit',NULL,1,'f8aad3901a95800a804fac4ffe71e83db50b0691ea1efdf1f271d9e1bf40ca81','dcdb430f6a9f84501989296c30da9b3ac3f6c2f0fdd4d4af6aeb3b80b4397d7e');
INSERT INTO "change_set" VALUES(8,'173692fa70b640a98c15e82e2dfb2e25',7,'2026-11-30T20:47:58.636+00:00','keeper','vm','dc4bf27095cc48deaee611ef6d112e3b','set-own-value','Set Key group','edit',NULL,1,'64c79596640dfe269551245a86dca624c4429e5a51d1e5ad974f226ebbb787cb','40c9e09f2c14a931a2e362457f7dc40c51c6e06e2aeda5271f10fac398185cea');
INSERT INTO "change_set" VALUES(9,'8df3d87ee5b64830aac80dc2fe7017b4',8,'2026-11-30T20:47:58.644+00:00','keeper','vm','dc4bf27095cc48deaee611ef6d112e3b','import-survey','Mapping','edit',NULL,1,'a3697dc06d706dbf3dec73607d8ded032fd8b4a033eecfc9c8b8b56cb7280829','c4a6b3a98ab57b911015dbf6ff4e0b9fdf4e1f98c3fb4c21760cb203396d2fa9');
INSERT INTO "change_set" VALUES(10,'e70c723b23d64243b725650c60f6ff46',9,'2026-11-30T20:47:58.683+00:00','keeper','vm','dc4bf27095cc48deaee611ef6d112e3b','fit','Fit','edit',NULL,1,'c976c78d8366126c77ad1f1e4655b6f58121dfa36d35771a89cb81c60f7a2105','51e0ffe1b9d09d3f71099f74a3c8570baf9129b2971b39169067e123dbb50024');
INSERT INTO "change_set" VALUES(11,'fd6e868bcca048c1875ae2c40e60978f',10,'2026-11-30T20:47:58.696+00:00','keeper','vm','dc4bf27095cc48deaee611ef6d112e3b','lay-supply','Power','edit',NULL,5,'a9c1add1cc91b4bdfcf77bf03fc0fed3ac88a8cc91939c27fe8b59a651b013a1','f0ecdaabd38c8af92462ab5a0a8e6714a214fea92c873c19e75da46781f8a657');
INSERT INTO "change_set" VALUES(12,'08a64284a809402c8986f029956a9f9c',11,'2026-11-30T20:47:58.714+00:00','keeper','vm','dc4bf27095cc48deaee611ef6d112e3b','make-set','Sets, waivers, packets','edit',NULL,5,'600f77fb5ac1421e57a98591274143e6b40cb424703d34e114eec18fcca71435','da7e4cf16594c627a6b56c726d4fcaf81e7cb40d9da4923e77ae0d4c1c17247c');
INSERT INTO "change_set" VALUES(13,'15306f8c6c804014949c4c97ab15c24e',12,'2026-11-30T20:47:58.744+00:00','keeper','vm','dc4bf27095cc48deaee611ef6d112e3b','record-piece','Pieces','edit',NULL,1,'34b78baa75ea79db344ca525b4660916c87e1f4cb399122f4dd9ff86344c6db4','be4bc2f1a3f788e1a84e83535cb5742b3cddd8fe23a853e574c71d89f76b0abc');
INSERT INTO "change_set" VALUES(14,'75ea5fa676ac49a2ab59f9958a594e80',13,'2026-11-30T20:47:58.751+00:00','keeper','vm','dc4bf27095cc48deaee611ef6d112e3b','add-opening','Add opening W7','edit',NULL,3,'30799b095c417dd9af371694980470a702fe50cd844bc67c76fd5e4304be44ab','d4e46db802cd108b1eb375649e5f6d66530506ecbc52bbfa961cd57f0aed7701');
INSERT INTO "change_set" VALUES(15,'6d501a0168f54729a54f20810b9fd59a',14,'2026-11-30T20:47:58.769+00:00','keeper','vm','dc4bf27095cc48deaee611ef6d112e3b','retire','Retire opening W7','edit',NULL,1,'37fde6d904ccea31b07a493d33638746ab1fdabeb07c7d8bb78acc55a1e2ec58','8b80d599c19863e1cbb78ff0a711115cf30e099963f91bf79b03b3f163385dc8');
INSERT INTO "change_set" VALUES(16,'4f042d7ad1234591b1fe0b8daa2dc749',15,'2026-11-30T20:47:58.790+00:00','keeper','vm','dc4bf27095cc48deaee611ef6d112e3b','import-survey','Delivery','edit',NULL,2,'9ff80ef8815cde01855030618ea2508f7f562c4eb4cb84b4bbec44c4ba23ead9','7061d54ec27e71d9c6e450cba33a0995c07417a125f027aab0bb54fddb648218');
INSERT INTO "change_set" VALUES(17,'e7b787dc79b44f24bf6ca21994eefe33',16,'2026-11-30T20:47:58.799+00:00','keeper','vm','dc4bf27095cc48deaee611ef6d112e3b','transmit','Transmittal','edit',NULL,1,'e67f79adcedc21a00753a0f3396dd7e5404772f4e4afc876d09119cef818b595','4481f1f5f88c34cd4975a9ac0ab64dd782b3dd28fc2688b1fb1760a78cd570b7');
INSERT INTO "change_set" VALUES(18,'fa31a1e8612f4970b24673511b738de8',17,'2026-11-30T20:47:58.807+00:00','keeper','vm','dc4bf27095cc48deaee611ef6d112e3b','set-office','Office','edit',NULL,1,'49f72e0cc707a5cb798d1d8076d84b150a8d5ff65dafc100019adb26f742a43d','8e4f9208489c5724c6145a99c2a7b07a86f841b59b0b1d8cd4aaccb41cbcb9b6');
INSERT INTO "change_set" VALUES(19,'7af1da34cfe64d9e9e1457b1cb75f05f',18,'2026-11-30T20:47:58.817+00:00','keeper','vm','dc4bf27095cc48deaee611ef6d112e3b','edit-facts','Edit occupancy group, sprinklered throughout of Mill','edit',NULL,1,'3c9b2d4995f582084591a9c83b7185f17480c16bc7248e39d23e1cf2851fe806','6ec29f728668c2f20adce5ccc7ecf3b94dd52c2428a8d2e1a1f7e89769871c19');
INSERT INTO "change_set" VALUES(20,'e68f98e1e5b3493b9d40f03c3f9e591d',19,'2026-11-30T20:47:58.835+00:00','keeper','vm','dc4bf27095cc48deaee611ef6d112e3b','edit-facts','Edit occupant load of 1','edit',NULL,1,'c3fad6423da72a4a47d0c0a5979d45285e17448c58ea9dfc87967404cb8c0b3b','544b04ff7bd2b1b3b136f75c9438be649e6fe01994e5ce23e27ec1aebb2e00bf');
INSERT INTO "change_set" VALUES(21,'8b42da4bac0343eaaeb467b89c5ba173',20,'2026-11-30T20:47:58.847+00:00','keeper','vm','dc4bf27095cc48deaee611ef6d112e3b','edit-facts','Edit direction of egress, edition of the code of 0012','edit',NULL,1,'ba487b96f1a26c0fc6951df424fb20adbb2c40eb1776ecc4e377084424546a7c','b4a74bf3cb3755de3951dc3acff181ec4d069ce8a18ad4e6874d0650cddec4ac');
INSERT INTO "change_set" VALUES(22,'1b36286144834549a9f8c4688975ca2f',21,'2026-11-30T20:47:58.855+00:00','keeper','vm','dc4bf27095cc48deaee611ef6d112e3b','add-person','List keeper as specifier','edit',NULL,1,'8457f1dd6a871fbdda0819b1c71738d9987582ea165411a44347ce74f7517908','2744f702fb9e27cadabb750250751c4a833da8e33b7f47072e7c5fddc21f6261');
INSERT INTO "change_set" VALUES(23,'6bfa0f6296b34e338a0493b487dc7da1',22,'2026-11-30T20:47:58.883+00:00','keeper','vm','dc4bf27095cc48deaee611ef6d112e3b','attach','Attach inside.txt to 0012','edit',NULL,1,'2380fccac7812d723a40c195c645844728a8980acea1f8f30019d6a1a44061d1','ea5ef3071cf4dfd1f0146549045fd50fc57cc3c845ab454399c9e7a51780be02');
INSERT INTO "change_set" VALUES(24,'992235afe11d4cf5b0627edb3651a047',23,'2026-11-30T20:47:59.399+00:00','keeper','vm','dc4bf27095cc48deaee611ef6d112e3b','fit','Fit 1 opening','edit',NULL,1,'59d36b62c96bca46d37cb7dc47d3bbd193512a07efc0a8960b328fc7f98d5dde','848133c85c7422322a7b27a6c09ad7a8721c1530ddaba9498a22214c3bba3892');
INSERT INTO "change_set" VALUES(25,'35790c750b9441c48f4b7738be039e6c',24,'2026-11-30T20:48:02.822+00:00','keeper','vm','dc4bf27095cc48deaee611ef6d112e3b','freeze','Freeze revision A: 2 openings of the whole project','edit',NULL,1,'fa3a45bec7b27b295fb331d61b0b241ac628ff18e7a7e01a8ccab3e1c047c7b4','4addbd6a9dbc81b5fbc359aee002367a09809ab8d3c0f60354c96a902118829d');
INSERT INTO "change_set" VALUES(26,'ccff2856e1464ddba04920f71d7c8f77',25,'2026-11-30T20:48:02.835+00:00','keeper','vm','dc4bf27095cc48deaee611ef6d112e3b','edit-facts','Edit hand of 0012','edit',NULL,1,'b2110cf2e3c9c03a6e3eb8f06a8c097b80815825b0ee83c4e76290ef64378a47','3f2988655316b1512a9fa5fee5c6d969debe33b0eba1587bafc7e74f719329db');
INSERT INTO "change_set" VALUES(27,'c3f2c5a3557644d889df03a69f7a981a',26,'2026-11-30T20:48:02.840+00:00','keeper','vm','dc4bf27095cc48deaee611ef6d112e3b','edit-facts','Edit hand of 0012','edit',NULL,1,'5ef1910a9d09480218acfae2eba8c786ecd7c52a4fea7f436bd3094d17838d78','e88537a8f9778816fbef100738c151dd35afa375744f3c1039ec3a498abb5e79');
INSERT INTO "change_set" VALUES(28,'349e7ace4a3e445fa0a81ca761457c0d',27,'2026-11-30T20:48:02.890+00:00','keeper','vm','dc4bf27095cc48deaee611ef6d112e3b','undo','Take back step 27: Edit hand of 0012','undo',27,1,'ca812467713b0e416bf5bf1676e9d9c0b516879d94126e1a042e5a86e8fd8476','2922b79f4e94a5e2405b761ab9e4576e6cdd808167733032b6722302853e8b52');
INSERT INTO "change_set" VALUES(29,'cfbfa5a92ca24bcaa300bfd461db5ac7',28,'2026-11-30T20:48:02.900+00:00','keeper','vm','dc4bf27095cc48deaee611ef6d112e3b','edit-facts','Edit hand of 9E4','edit',NULL,1,'2c3e951dd8dd59912733e700dd8a851ea4cf45027455f72f1b1033b95faa8039','22757bfac095ec04c8731e998d9e96ee514989819ba3b68270143a46dc63cc10');
INSERT INTO "change_set" VALUES(30,'f03ab2be2d3d4117af67a883ecc736b7',29,'2026-11-30T20:48:02.909+00:00','keeper','vm','dc4bf27095cc48deaee611ef6d112e3b','edit-facts','Edit hand of 9E4','edit',NULL,1,'1952a249524f95a6cba1d5220f2b0403a98a0ee819611ee765ea4d5096f6ef56','605f694edbb6a4f4f4db33d7b75d90d4628b4a4bd8e215fb186a4961d1091e70');
INSERT INTO "change_set" VALUES(31,'986c3d4d9a11481193a0e3400ff88b42',30,'2026-11-30T20:48:02.945+00:00','keeper','vm','dc4bf27095cc48deaee611ef6d112e3b','undo','Take back steps 29, 30: Edit hand of 9E4','undo',29,2,'de2dd76474ca540643cb9b2b22e67b6de064ede63b737c6a55d70b670353a656','27f4f3be022eec19828f47630a291863e00e3a47a0ca44fbbfcf25c06a142850');
CREATE TABLE change_target (
	change_set INTEGER NOT NULL, 
	target INTEGER NOT NULL, 
	CONSTRAINT pk_change_target PRIMARY KEY (change_set, target), 
	CONSTRAINT fk_change_target_change_set FOREIGN KEY(change_set) REFERENCES change_set (number), 
	CONSTRAINT fk_change_target_target FOREIGN KEY(target) REFERENCES change_set (number)
);
INSERT INTO "change_target" VALUES(31,30);
CREATE TABLE chosen_part (
	id TEXT NOT NULL, 
	version INTEGER DEFAULT 1 NOT NULL, 
	opening_id TEXT NOT NULL, 
	lock_point_id TEXT NOT NULL, 
	role TEXT NOT NULL, 
	part TEXT NOT NULL, 
	quantity FLOAT NOT NULL, 
	CONSTRAINT pk_chosen_part PRIMARY KEY (id), 
	CONSTRAINT uq_chosen_part_lock_point_id_role_part UNIQUE (lock_point_id, role, part), 
	CONSTRAINT fk_chosen_part_opening_id FOREIGN KEY(opening_id) REFERENCES opening (id), 
	CONSTRAINT fk_chosen_part_lock_point_id FOREIGN KEY(lock_point_id) REFERENCES lock_point (id)
);
INSERT INTO "chosen_part" VALUES('c0b766a9fb45417ab3b4a77d5290546a',1,'1616b6333a7f40fc901d066235230f53','1616b6333a7f40fc901d066235230f53','cylinder','C-1',1.0);
CREATE TABLE circuit (
	id TEXT NOT NULL, 
	version INTEGER DEFAULT 1 NOT NULL, 
	supply_id TEXT NOT NULL, 
	name TEXT NOT NULL, 
	wire TEXT, 
	temperature_c FLOAT, 
	at_once INTEGER, 
	limiter_a FLOAT, 
	limiter TEXT, 
	alarm TEXT, 
	notes TEXT, 
	CONSTRAINT pk_circuit PRIMARY KEY (id), 
	CONSTRAINT uq_circuit_supply_id_name UNIQUE (supply_id, name), 
	CONSTRAINT fk_circuit_supply_id FOREIGN KEY(supply_id) REFERENCES supply (id)
);
INSERT INTO "circuit" VALUES('91f91a31869748ef8dbec3c9a193872c',1,'2326656ef38f469e91ee90842969e3db','A',NULL,NULL,NULL,NULL,NULL,'drops',NULL);
CREATE TABLE delivery (
	id TEXT NOT NULL, 
	version INTEGER DEFAULT 1 NOT NULL, 
	number INTEGER NOT NULL, 
	file TEXT NOT NULL, 
	"key" TEXT NOT NULL, 
	at TEXT NOT NULL, 
	person TEXT NOT NULL, 
	told TEXT DEFAULT '{}' NOT NULL, 
	CONSTRAINT pk_delivery PRIMARY KEY (id), 
	CONSTRAINT uq_delivery_number UNIQUE (number)
);
INSERT INTO "delivery" VALUES('ad3ecb753f394a078d32644bcc53c008',1,1,'doors.csv','f','2026-01-02','keeper','{"new":2}');
CREATE TABLE engine (
	"key" TEXT NOT NULL, 
	program TEXT NOT NULL, 
	parts TEXT NOT NULL, 
	CONSTRAINT pk_engine PRIMARY KEY ("key")
);
INSERT INTO "engine" VALUES('program','0.1.0','{"fitting":"code"}');
INSERT INTO "engine" VALUES('43da2bfe67f668f9eb707f2ad1200c9f','0.1.0','{"attributes":"b2b996d5b6a7dc63c265116ad889a273","calc":"91436e7d4e6485df9a6e806cc1ed9a0f","catalogue":"e0a2e5e1d9c7b718b94406076751831d","family":"f1370ffd80a399f8096e52df29b5d53c","fingerprint":"ec19441270b1cf62c9ac718a54c03509","fitting":"044f7098c992cd67df5d1a9353d3c1f1","hwsched":"c4a96cdca046aeaecf37a157d67b6c01","keys":"0df2b9713277250cfe0dbefcea5a537f","language":"2e42d7b146fe8984c9f01b0d3a99b54a","outside":"acb860361b5b7f575d1c3e0dbde52f19","paths":"60e302995b63b5195fa21074b2edd36a","quantities":"38279f7568b7526f7e355b0787b2c9a6","rules":"a9cfc8888f1a7bfc0164ce6d846e8c2f","survey":"a9e96733d1241a1b0406eb45cee6a1e7","tables":"e193595957e1383b0512de8f07dfbf8e","telling":"f0f98d625b09e4ffa1597b5029001bca","values":"8cc38790d46258b5341b16cbe5b246e6"}');
CREATE TABLE existing_item (
	id TEXT NOT NULL, 
	version INTEGER DEFAULT 1 NOT NULL, 
	opening_id TEXT NOT NULL, 
	ordinal INTEGER DEFAULT 0 NOT NULL, 
	kind TEXT, 
	leaf TEXT, 
	face TEXT, 
	x_mm FLOAT, 
	y_mm FLOAT, 
	width_mm FLOAT, 
	height_mm FLOAT, 
	projection_mm FLOAT, 
	disposition TEXT, 
	lock_form TEXT, 
	function TEXT, 
	backset_mm FLOAT, 
	cylinder_height_mm FLOAT, 
	case_height_mm FLOAT, 
	case_depth_mm FLOAT, 
	case_width_mm FLOAT, 
	case_above_mm FLOAT, 
	case_offset_mm FLOAT, 
	front_height_mm FLOAT, 
	front_width_mm FLOAT, 
	trim_key_mm FLOAT, 
	trim_inside_mm FLOAT, 
	thumb_turn BOOLEAN, 
	cross_bore_mm FLOAT, 
	edge_bore_mm FLOAT, 
	cam_form TEXT, 
	"fail" TEXT, 
	latch_form TEXT, 
	bolt_form TEXT, 
	stops TEXT, 
	device_form TEXT, 
	rod_x_mm FLOAT, 
	rod_ends TEXT, 
	bolt_inset_mm FLOAT, 
	cutout_height_mm FLOAT, 
	rated_v FLOAT, 
	rated_a FLOAT, 
	current_form TEXT, 
	conductors INTEGER, 
	loop_ohm FLOAT, 
	item_notes TEXT, 
	extra TEXT DEFAULT '{}' NOT NULL, 
	CONSTRAINT pk_existing_item PRIMARY KEY (id), 
	CONSTRAINT fk_existing_item_opening_id FOREIGN KEY(opening_id) REFERENCES opening (id)
);
INSERT INTO "existing_item" VALUES('cd75a50db72a40208de44b127e57b51b',2,'1616b6333a7f40fc901d066235230f53',0,'lock',NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,69.85,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,'{"key_group":"AA"}');
CREATE TABLE facts_read (
	"key" TEXT NOT NULL, 
	names TEXT NOT NULL, 
	CONSTRAINT pk_facts_read PRIMARY KEY ("key")
);
INSERT INTO "facts_read" VALUES('a5ca83876477bf081178c26357410b22','{"opening":["form","hand"]}');
INSERT INTO "facts_read" VALUES('84d8a6f668ce7b7e99626905490ca049','{"leaf":["construction","material","position","stile_mm"],"limits":["lite-clear-of-lock.overlap_mm","one-place.off_mm","one-place.share"],"opening":["form"],"rules":["case-within-stile","lite-clear-of-lock","lock-converted","one-place","stile-told"]}');
CREATE TABLE fit_content (
	"key" TEXT NOT NULL, 
	status TEXT NOT NULL, 
	content TEXT NOT NULL, 
	CONSTRAINT pk_fit_content PRIMARY KEY ("key")
);
INSERT INTO "fit_content" VALUES('9f737a60efd3e7749fca3581fe60d2792f2094640b394a4735876f394448155a','to-measure','{"status":"to-measure"}');
INSERT INTO "fit_content" VALUES('4d1a5b681209a263fbb5d5c98b568915f236ffecd8d4f070f0326407c934a9cc','to-measure','{"status":"to-measure","needs":[{"fact":"existing_item.lock_form","label":"existing item: Lock form","blocks":"the choice of cylinder or lock"}]}');
CREATE TABLE frozen (
	hash TEXT NOT NULL, 
	kind TEXT NOT NULL, 
	content BLOB NOT NULL, 
	CONSTRAINT pk_frozen PRIMARY KEY (hash)
);
INSERT INTO "frozen" VALUES('c56fb1045bc80469fc87043d02841d02adb819c4ba3161ea24d4e38dc6e2c3a4','files',X'5B5D');
INSERT INTO "frozen" VALUES('9316bee44d8b7dfde5a398b1ce655465a5bbfb46ac94f1bc0148ded7681639fe','office',X'7B2274657874223A22666F726D6174203D20315C6E7061706572203D205C2261345C225C6E222C2266696C6573223A7B7D7D');
INSERT INTO "frozen" VALUES('db9dbc10f6f814cf72e011da14b518ee818fe6b592e4aee536351b9288520ca3','engine',X'7B2266696E6765727072696E74223A226539633432373130653666366233353638396536326266303939653631303333222C2270726F6772616D223A226877736368656420302E312E30227D');
INSERT INTO "frozen" VALUES('d01372fcd5f4a830e4bb59fc75d1e27a66be344e42c979825f007e2228ce8bb9','fit',X'7B22737461747573223A22746F2D6D656173757265222C227061727473223A5B5D2C22737461636B223A6E756C6C2C22706C6163656D656E74223A6E756C6C2C226361626C65223A6E756C6C2C22686F6C6573223A5B5D2C22706F776572223A226E6F6E65222C2262617474657279223A6E756C6C2C2272656675736564223A5B5D2C226E65656473223A5B7B2266616374223A226578697374696E675F6974656D2E6C6F636B5F666F726D222C226C6162656C223A226578697374696E67206974656D3A204C6F636B20666F726D222C22626C6F636B73223A227468652063686F696365206F662063796C696E646572206F72206C6F636B227D5D2C22636F7374223A2230222C2263757272656E6379223A22222C22636F73745F6E65656473223A5B5D2C226E6561726573745F6D697373223A6E756C6C2C2272756E6E6572735F7570223A5B5D7D');
INSERT INTO "frozen" VALUES('e0f3e5258dd93fb5be5584a3ee4c19e48a8ffddeff536259ffbe80fd6843f2a1','findings',X'7801C5574D6FDB3810FD2B844E09201B71804517CA294D1B6C81457781764F451150D4C8624D910229C5F116FDEFFB86FA88DC38499BA6DD8B618D287266DE9B37C30F9F13DF194AB26463DDD62E722A9DA745E1B531499A143A28DD186D7945E8FC35ED600D744D5EB73BD8B6D25B6DD730D614825CF3BA7F6CDC2B1396A808C2902C33F1277EC556176D7536B754A4D755BB676A2BAD3616BBED596BD9E24C69CE846B888FCCC4A5F624BC6CF1B08403B90C3AE078E5EADA59D178A95AAD28136D45F148216D21B6956C4568F13708ACD2AD2848E982F082B01DAFED2CAC6B47019BAACE734817AE6E0CB5FDFB3E0FD93C8C9F1AD8B5341D9CC93E7F491399BBAE8543234031C549F621E12C2FA31B57750DC7E3739FDD9961CAEDCC3666161F0DA95DF6494D3EA6C0575F539164A53481C6C7AB9CA1C7FAC669CBDE245FD2C33CD221748485CFC1A309F773A5C00E9D1BA08F6CD08C12AFD71EAF603673EBBB566A2F0AE7FC6CE91FA0C083B451B26BB5B34194CE18B715A577B5A07840CA0CD23E159EA4AA22AF2A6C87401FE2CB4F0AE0103DC6BC4FF418919553EE6670F741CD0C31BAD9730CEEC7D9E07C411EDB3E2B1BFEEAE50028F97A06EFEB9BC6A150E73498E9C59EB44C45B1671DCBE24CD08D0E2C32100BAAA1644E6DE2690FB2878564FAD0F027AC3E93140DA2C3CF8DF4ED63523351E7FF8DF610D54650EF508D01997188064066A6416606B19A6038AC4D6332AF18852567F42A9EF0245A96BA5DA04F444DFF9A9085535D4D3662F248A77B0FF8B095D0014D63AFE98DDE3EC4994F2E47F309CAEB868506FDD22107CCB320D650FC40452AB8D5EEA0336517A41141EE02B60CC276751E6BE97EC1898463EFE45A6ACB643D041FCC1372A3D3CF92E25E69168D335AF1D0B057F4DCA3A151881AF1E2E523797EEB7257EC44250332A0B9893B51CB5D1C0504F7ED14A3455BC1AE21C7CA5301FC302CA443CB27D499E754025521D1E637D4B40F96EF8690685ED978B7F6B2AEA9887B0D7BF0F722DFF5D304173166279CC00EF6953DEB05E76113EBBE5FE2AC02679C8FA6BCD3A64006063F315391A880BEB4618BED624C00B0B3D04D713185C50BE04E57E818C423B03EA940620758601244CAFC1DF8A68631C30DE4E54E7FEF183849D86D379E23F0E6E585589DAC4E96A7CB17E2E8F4E474757C26DE5EFE7DCED654BC807DB5FC6DF9BB38A21B85EC7367CE90C8CEA3176364055C486A49C81BBA3319522D201B0338669B72B6902826E51AFDE87077C85DF19EC1617C4463A465EE72CD827DF8855139CC9118A7611FA64E9993896031474CDF46421AB197856BD845FE68B0746DE578AE068FAE79EF4F9DD7A1D0186331A932E42825B2908569B81DD8765F718F7D7CAAF021AA65FFE249CCA84832651725C66B6E5B7B757D8F767E333778289B35F1BD8E3D2172897A24D4FF7821F8DE0BC6F8E59C7E4354228FADDA9540B392BEC0F58644501515B8246530594872D0FF02B17117C06922CC47EF5EBD11ABD56AF1EA2BB2ED8E91A6FB753ABBBDD1FCF2F00F49C7900AF87C8736710EBC734DB835948CCCD59819ECF06DB792E983EF20E4C7FF006EF41712');
INSERT INTO "frozen" VALUES('fa7461c1e09582513030432f1b1620cec7460ccd3978e70f68a01609ef0e1a50','opening',X'7B226F70656E696E67223A7B226964223A223736373261643738613639633462353261333735623132343234643438383564222C226D61726B223A22394534222C226C6576656C223A22726F6F66227D2C226C6561766573223A5B7B226964223A223864613338376665376533333439636239616635386639373035613935366434222C22706F736974696F6E223A2273696E676C65227D5D2C226974656D73223A5B5D2C22706F696E7473223A5B7B22706F696E74223A7B226964223A223736373261643738613639633462353261333735623132343234643438383564222C226974656D5F6964223A6E756C6C2C226E756D626572223A312C226E616D65223A22222C226F7468657273223A5B5D7D2C22666974223A2264303133373266636435663461383330653462623539666337356431653237613636626533343465343263393739383235663030376532323238636538626239227D5D2C2266696E64696E6773223A2265306633653532353864643933666235626535353834613365653463313965343861386666646465666635333632353966666265383066643638343366326131227D');
INSERT INTO "frozen" VALUES('9adfe8fcb802ccde7797b38b9e746fc3f1c567907fdbe47325d7e62910d4a3b8','findings',X'7801CD584D6FDB3810FD2B039FB6806D2439EC413E15418B6D506C8BDDECA9280C5A1A5B8429522025AB46D1FFBE6FA80FCBA9ED4DD314D983136BC48FE17B6F8633FEF475E26BC39364B2D6D5CCD5F8AC6799AA78329D643AA4BA34DACAEBCCA575C1B60A781178C75E577B981BE5ADB61B180B0E416D64E89F8EB018A5AEC6F084F0B551811AE7B79C11B6A0D59E942556DE68F684B5827696DC9AAA9CA9F46EE35531C5900C061DC859A642ED29E0E330C4373AF01C5BAE54D0011BA6AE28B040E9555AE9545C4F6B2F9EFCCD4C4DAE2ACAF47A8D6DBA45D596E155427913D25C7C2A590E11BDFEF8D787BB37B7F7349B056D539ED525BCC978418DAE72583D1B56019394090E8BB3675254AA74CB38270092138A733B656A86775FBF4D276A0523FC81D93267B07EFA3C05767AC7D924596329EE1F972B8115034BA76D9CF36D3A70D46EF34C34DD0BD8ADDF80FEE6EAE6F7D9D5F5ECEA867EDB3297EC5F91606F325054E5E04BC8590361501A5CC1A00690E56036C5DB0D1089803D8A977721D4DCB2DD3AA0364ADB113BB217B68ED4AF3084D6DE157142D055E4FE57C0BBB5AEB1B315AF9DE759E6B531E0E1280A42ED77BC87F53F42E01F1BD74A28D24D90CC3AA1F7F80B196555BE185B72D69BBC3A3201DB746B115047D60261E9B5328B5EB009BDD5909F5715A858107FD141BE41DB5C2474BB47E80A7B50DF0ED419E7FC05769208AF781A232F864DA81084128012C419A73A937812C90B41B58575E320F221E06E5D511AAEDAF72D58C9F8AC2F7FFA53BAE9A9EE63732228CCA3AFCBA2C0E9E273CBD3C830B034B2F51C61529755E62D3D30F4FC2C859F79DAD1B33CACFBA49C70245A2D8185AD9E43B49DFF09BD4E534851AF0CA4863C865C38BC7AB3F17805B3195BFF806A2E2A2D557585941F68ED8C714D1BDD1CD79A1244A7FD943CAB348F52447AC970A62EA79F94D8E0D0937D3DA58B1ECD41173DA56A4064C473EBFFC810FDFE794E9D47103F37A71FFA2BCFF962CCE797D2216CC7641EA51809842E910DEA3F93A37AB577D9E8BD932C8EDD2E0A43D2CA30D1C894B60AE09844FA1424A34AE5632DF22855BCEC694F49AB27F53B690944230D7147C8C834E4939895061A4E27A11ECC36E708A2CBB8C39364996A9FD6281363CA79A8C8D23551A68FBE191DC52914EAB2347B2936D2DC05B6A212BA35F81AEBA833455E82AA6BE74C85921397114A3CA931ADC3FF439D8925C5828A52EAACEF3208EA98B875421FC5F7EE49F4798AB1D623BC1C286B67CF45899397C75382C2B0DDA04AED2A695F034BA99B3A842B4777D78273DD56271723F119D0C5FE922BC4A569ACE41AB53F87EEDDF51859CC9CB7675916FF0368632D7475757D4399574D184118BB1BA9816DDBF34425B68DCFAF4677B8F2D06B9D43758C697F7761F8CF413A84D35191F1A3E18F32128AF524ADE49E8C5319DA2F2936751586C046E1D9E51C7A2DAA7E4456885C1D342E5C794EB7E821D1B2557D8D1BAA78B17486C2E1B9A54E55CAB80D9A13B977DA02169D1E6A1434809265B09C46AB2A57B22CB7423F2AB6019307D7D1E914B3A053A131BA862F503AE031E6769C89A668E847D173A8439F4C7CEC53FDACB692F962223D62FECC2F03C8BC52893EF859C066D2A0C4141AB968D7166EA55A6A6F1660BFA7023DD842DA0EC9EB1B34CA567E36683B5369480EFD2A3066B617C20D5E74B4DC4BE72F89B2DB565ACB73B173F06784F40FA4F9CFFF02BE60FB52');
INSERT INTO "frozen" VALUES('42a3201ebcc8cd4c2799b18869d1981d88bda4ed66043d8571db376b31b6fb0e','opening',X'7B226F70656E696E67223A7B226964223A223136313662363333336137663430666339303164303636323335323330663533222C226D61726B223A2230303132222C226275696C64696E67223A224D696C6C222C226C6576656C223A2231222C227374616972223A747275652C226567726573735F746F77617264223A226B6579222C22636F64655F65646974696F6E223A323032312C226F63637570616E63795F67726F7570223A2242222C226F63637570616E745F6C6F6164223A34302C22737072696E6B6C6572223A66616C73657D2C226C6561766573223A5B7B226964223A223436386464363465343963353438613739323439323239616139323138626164222C22706F736974696F6E223A22616374697665227D2C7B226964223A223963663333346130376432613438323038313064663830386566666237356432222C22706F736974696F6E223A22696E616374697665227D5D2C226974656D73223A5B7B226964223A226364373561353064623732613430323038646534346231323765353762353162222C226B696E64223A226C6F636B222C226261636B7365745F6D6D223A36392E38357D5D2C22706F696E7473223A5B7B2263686F73656E223A5B7B22726F6C65223A2263796C696E646572222C2270617274223A22432D31222C227175616E74697479223A312E302C22736F75726365223A2262792D68616E64227D2C7B22726F6C65223A22756E6974222C2270617274223A22552D31222C227175616E74697479223A312E302C22736F75726365223A22736574227D5D2C22706C61636564223A7B226C656166223A22616374697665222C2266616365223A22696E73696465222C227061747465726E223A2261626F7665222C22785F6D6D223A32302E302C22795F6D6D223A313130302E307D2C22737570706C795F6C696E6B223A7B2270617274223A6E756C6C7D2C22706F696E74223A7B226964223A223136313662363333336137663430666339303164303636323335323330663533222C226974656D5F6964223A226364373561353064623732613430323038646534346231323765353762353162222C226E756D626572223A312C226E616D65223A22222C226F7468657273223A5B5D7D7D5D2C2266696E64696E6773223A2239616466653866636238303263636465373739376233386239653734366663336631633536373930376664626534373332356437653632393130643461336238222C227365745F6E616D65223A2248532D31222C226F776E223A5B7B22656E74697479223A226578697374696E675F6974656D222C22726F775F6964223A226364373561353064623732613430323038646534346231323765353762353162222C226E616D65223A226B65795F67726F7570222C2276616C7565223A224141227D5D2C2266696C6573223A5B7B22656E74697479223A226F70656E696E67222C22726F775F6964223A223136313662363333336137663430666339303164303636323335323330663533222C226E616D65223A22696E736964652E747874222C2268617368223A2235303862376231663131336664663137333636306432623364616365343530333961366432386630306565323733383263303463393361663832313365346339222C226D656469615F74797065223A22746578742F706C61696E222C2273697A65223A31362C227469746C65223A22496E73696465222C226E6F7465223A22222C2261626F7574223A22227D5D2C22706965636573223A5B7B22706F696E745F6964223A223136313662363333336137663430666339303164303636323335323330663533222C22726F6C65223A2263796C696E646572222C2270617274223A22432D31222C226E756D626572223A312C22646F6E65223A5B5D2C2273657269616C223A22534E2D31222C226C6F74223A22227D5D2C2261736B6564223A5B5B312C22626C616E6B225D5D7D');
INSERT INTO "frozen" VALUES('4ebb9d50b7b4f641e168207e8a79cb3c23ece979d81cf9b599d8c0934b59f081','chunk',X'7B223136313662363333336137663430666339303164303636323335323330663533223A5B2230303132222C2234326133323031656263633863643463323739396231383836396431393831643838626461346564363630343364383537316462333736623331623666623065225D2C223736373261643738613639633462353261333735623132343234643438383564223A5B22394534222C2266613734363163316530393538323531333033303433326631623136323063656337343630636364333937386537306636386130313630396566306531613530225D7D');
INSERT INTO "frozen" VALUES('1bdb973033afe1d3b522d6a9cfddfef5fcf2d888a9b89fc8c199264c43b74319','supply',X'7801ED585D6FDB3614FD2B849E36C0352CDB716CE7A92886015D510CD8863D1485414954C485223592B21B04F9EF3B97D487933471DAA1C1360CC98328F3E3F2DE73CF3D57378915AE553ED9DE24AE6D1A754D4FB248B6C97C315FADCE56A25CACCBE56A2336A9109BD97A39DF60B028B26492685E0BCC7CA38C131EE3AC95AA90FA32D9EA56A949A2C45EA83B835DDD0F1BC5732C8E133FD1FBF9F46C925C8F33AC74621C35DCC2CA38BD7574ACE2B0138772EF8585DDF1B73894C2F52F9CE7BAC8AE779569EDF0D28BBA1196FBD68A5DDECFD4C68FCB729E498D5B856D6F27492E6DDE4A8F1D3EDCF483C1579BB4DCA47C91AE579BF3E55A94EB2213F922DFF074B3589FCF739819BDBBFB42D7BEC6CA83B483A33E6B37F73BA347672A594B7864C7FB7B71C52DFC9B14D6340E1BDEB967377BB8E7FF28780A050E20CAC56E8FC8031385D8CB9C20F3E12379B5E81F6DABBB97796BADD09E62410B72A3146F9C407ED1D0040C8684A11D2A13B2670C9CD4B675D538BED2E6A077F7DF3E8877634DA6441DA17A25356573ABC36244BF16CEF14B4A205F09A684BEF4153325A3110C67A535358B2860DEB0B729938E8DCBB51005ED9C60EE34AE4692C27A5C46E32A11E1388767A645FA246FD3E47672933C61C7A1E29ECD66E99C15961FDCD1795B263DABB863DAB0128F9E66E6A6D5C84378BC37A53B7A8A290F2C4957E92A5B2D160B7E5E2E6765BE99A5C56CB59A2FCEE68B5979B638B234B9C5351031B1336529882CBA20D1BDC29D4F6E860D6A6EAFC264BA119913F33749D7ECF5EF3F326754A02D04C99434EFE6AEE74E1E012A21460BA8A1547E859DF640144E96CE4530756C330DA439B91BAA2152BDBB0E15C8133BB1C61C84ED438FA0E715781D80309675144F0EBAC73680BA51387FD781FE864E8B20C89669CAE7D9F972B99A2DE767E57A51AC96F82BD2CD4A640587C904B65D5746009449E24D3F0CEEEB6720B72294E28C387C86AB06806E97D3D924B9E46D407E8C058E73DE0EBE1C22C32D578A0A573A4962D94930D554E0D019EDC26BD068C006AD76804AB22DB97282DC5309558C19CB9D6B6B4AF70FE460D45A49C1CB05038E29E1C0D3B5D4DC4BA3DD51128667E27EA305F0AE8B36F78882E079C50EFC7A827CC00F523398176C9D30A3FB0CEE167F246B90824DEB89AF627544C943A886CAA0107177F473574B774217E39A07B4D4087E35EED1D5D7FE84E792CFB3F07694E3919122A2E9628FB0CD3150EFF8BE33937177250A727537137BE50A61DACDFB1B043E8DE925752588BF1189BB71BDCFC1F79939E0E4D29A83AFA83ADC02C7E0E18E466EFA0140846C5104ED4E5EBCEA59BA902E978D8204C18F213109ADD053567A4AD703B7C44A7839F2F96F91E3B7C4962773798AA519071EE97053D7C04F6379EE51D0B68CB3BD511E552232EE2130B067076383F35A4F1C0DEEC1928E7B8836B1D31B53374A786C11E3B5653F1F910A9DB9E7AAA53A49D4DA978841400E8C7E2FDA072E89E262968151C370979123B06563244284476C19173E5B66756E1F8AD6082BA2E6E424C320B2DF3C9A5F5EA6BF756CC1F05BF62E2807221E419CF4586C03AB0F71BD2F1A5E26B0CF90E7FFC4C07F952EFAD6B1EF1CB5253DF658CC919343C4BBF983D878914C7EF9800F44F8B788FB5009643B0A3D78FE9A29C30BB8591790C4DE0D940CA6EE688BBD1E0BD993710F481A653CB1B715F91552B7E8958812DC790631D4BFA80DC6517073CF95B96CA15AF0B36BED5E5C33C80E73B860FDCED022C616301DC22633E82870C4E0936715870BEA3E1ED0CA057B0EE0067F1C23EFB8869CD4C0FF5158F2AE0338854AFA2400DF8D5AE23D419065161A83D55C923AD5E806632DE2E514D08BFE8D1041B44B6029F48E717AD05B244563670978951352AC9C852F3F01D10A6A980E08587293002FEC04C1AB450EA1CA32E08CA14976C0BC8232D1689DA9292D0CFAA829FB4988063A0EEA8DCD47998C432150A0F0B8BE6690342228E6CC7C9A307CD45102406542E7F86805CD12CD27890BBC06A912BA1DDA323DDA72820E58A171C69E4C7CCA45438A9DCE2087E46847E86A689448D9E32B1A3E3FB1EF38CBB8B55258D4C8901731C556ACAE9136D095B41817C443664D7B594155614FADAEE98A9D1398F8B3954D0D0DFAFD94FD8AC378EB2B4322107DF19E9CF7478B0F65858472834585C8253E433C410617ECFD0F6FD8F9FC6C9ACE97C1E3E179B19A3027A8D5E0609EDC34F4052D76C35056EF04DF07733B2C74C6D1893075880CE943B21231C47F88B426954A525150D3028289DE82EAC5FB6D709FE29950C19280AE8809A08146BC300D01815CDCBD79F2FE44508339BD9EEDBCF258B57AA03ED112BC8C2E8183EFEA8E1372B2EF26F1E5E9447BF0209F7FE55768E5914FF7B43EA22EA91FC5828A2285B82173E1F2D0453CD2345D6097AE278DCD665F338E3E4FF6C941FD4D5FAF5E755D452075B4A2A1EB45C12009E9658DCCD4E015341B14FACF2D0CDF82F0637D0183BFB49DC6A95FDD4D3F91506396FC428EA32F5631BBF1006F86866E4B37A34B45CE1CBAF5AE6E058240EED38CBC2FB6FF0AB87EBCFD0BB3601278');
INSERT INTO "frozen" VALUES('b040cdd970dd66d8205db9545220b2fb8be7442d49d4b56acd5ecd3b2d34c84b','power',X'7B2270726573656E74223A7B22737570706C696573223A5B7B226964223A223233323636353665663338663436396539316565393038343239363965336462222C226E616D65223A22436C6F736574222C226275696C64696E67223A6E756C6C2C226C6576656C223A6E756C6C2C226C6576656C5F6D223A6E756C6C2C22706C616365223A6E756C6C2C22785F6D223A322E352C22795F6D223A6E756C6C2C22726973655F6D223A6E756C6C2C2270617274223A6E756C6C2C22757365223A226C616964222C2262617474657279223A6E756C6C2C22626174746572696573223A6E756C6C2C227374616E6462795F686F757273223A6E756C6C2C2274656D70657261747572655F63223A6E756C6C2C226E6F746573223A6E756C6C2C22636162696E6574223A6E756C6C7D5D2C226369726375697473223A5B7B226964223A223931663931613331383639373438656638646265633363396131393338373263222C22737570706C795F6964223A223233323636353665663338663436396539316565393038343239363965336462222C226E616D65223A2241222C2277697265223A6E756C6C2C2274656D70657261747572655F63223A6E756C6C2C2261745F6F6E6365223A6E756C6C2C226C696D697465725F61223A6E756C6C2C22616C61726D223A2264726F7073222C226E6F746573223A6E756C6C2C226C696D69746572223A6E756C6C7D5D2C2272756E73223A5B7B226964223A223065323033623931323065663431373361346364313631393937336433313037222C22636972637569745F6964223A223931663931613331383639373438656638646265633363396131393338373263222C2266726F6D5F6E6F6465223A22737570706C79222C22746F5F6E6F6465223A224A31222C226F70656E696E675F6964223A6E756C6C2C226C656E6774685F6D223A6E756C6C2C2277697265223A6E756C6C2C226761756765223A6E756C6C2C22737472616E64696E67223A6E756C6C2C22706172616C6C656C223A6E756C6C2C2265787472615F6F686D223A6E756C6C7D2C7B226964223A226234313161326237343436303432356638336436343634366431393665626461222C22636972637569745F6964223A223931663931613331383639373438656638646265633363396131393338373263222C2266726F6D5F6E6F6465223A224A31222C22746F5F6E6F6465223A223136313662363333336137663430666339303164303636323335323330663533222C226F70656E696E675F6964223A223136313662363333336137663430666339303164303636323335323330663533222C226C656E6774685F6D223A342E302C2277697265223A6E756C6C2C226761756765223A22313820415747222C22737472616E64696E67223A22736F6C6964222C22706172616C6C656C223A6E756C6C2C2265787472615F6F686D223A6E756C6C7D5D2C22726F75746573223A5B7B226F70656E696E675F6964223A223136313662363333336137663430666339303164303636323335323330663533222C22737570706C795F6964223A223233323636353665663338663436396539316565393038343239363965336462222C226C656E6774685F6D223A362E302C2270696E6E6564223A747275657D5D7D2C22737570706C696573223A7B223233323636353665663338663436396539316565393038343239363965336462223A2231626462393733303333616665316433623532326436613963666464666566356663663264383838613962383966633863313939323634633433623734333139227D7D');
INSERT INTO "frozen" VALUES('46bfbe8a4aeea1f90a6c3c12dd08f9361e5b861d7241cbd8e1428b263b4bc329','part',X'7B226E756D626572223A22432D31222C226B696E64223A226D6F72746973652D63796C696E646572222C226465736372697074696F6E223A22222C22737570706C696572223A22222C2266696E697368223A22222C22756E6974223A224541222C226C6973745F7072696365223A2231322E31222C2263757272656E6379223A22555344222C22737570657273656465645F6279223A22222C2261747472696275746573223A7B7D2C226B6974223A5B5B22532D31222C322E305D5D2C2273746F636B223A6E756C6C2C22707265666572726564223A6E756C6C7D');
INSERT INTO "frozen" VALUES('cc462d6aade99b6d850f37587cc23cfce2698a965c1428852d9fed81e2af6963','part',X'7B226E756D626572223A22552D31222C226B696E64223A22737572666163652D756E6974222C226465736372697074696F6E223A22222C22737570706C696572223A22222C2266696E697368223A22222C22756E6974223A224541222C226C6973745F7072696365223A6E756C6C2C2263757272656E6379223A22222C22737570657273656465645F6279223A22222C2261747472696275746573223A7B7D2C226B6974223A5B5D2C2273746F636B223A6E756C6C2C22707265666572726564223A6E756C6C7D');
INSERT INTO "frozen" VALUES('0a1fd385719f443d58ec8bd17a0b3bc46f3dec6df5569e134519208f16824cc1','catalogue',X'7B226B6579223A2237346534393836346333303266663930613137343137356438636532643934303930353463336430373130303330363532333233343263643135396338636639222C2272616E6B73223A2265336230633434323938666331633134396166626634633839393666623932343237616534316534363439623933346361343935393931623738353262383535222C227061727473223A7B22432D31223A2234366266626538613461656561316639306136633363313264643038663933363165356238363164373234316362643865313432386232363362346263333239222C22552D31223A2263633436326436616164653939623664383530663337353837636332336366636532363938613936356331343238383532643966656438316532616636393633227D2C226F776E223A7B7D7D');
INSERT INTO "frozen" VALUES('9a57ee371d8b4f936b36981eaaafb7502caa9a807db33e8f88c2c005ddf36ffd','project',X'7B226964223A223435333638656338666332353432346339316639626431326639323763666232222C227469746C65223A2253617665642079617264222C22626172655F756E6974223A226D6D222C2273657474696E6773223A7B226C656E6774685F7374796C65223A226D6D222C226C696D697473223A7B7D2C2272756C65735F6F6666223A5B5D2C22707265666572223A22636F7374222C2263757272656E6379223A22222C227261746573223A7B7D7D2C227465726D73223A7B2263757272656E6379223A22222C22646973636F756E7473223A7B7D2C227261746573223A7B7D2C226C61626F75725F7065725F686F7572223A6E756C6C2C22686F757273223A7B7D2C226C6561726E696E675F72617465223A2231227D2C226F776E5F6669656C6473223A5B7B22656E74697479223A226578697374696E675F6974656D222C226E616D65223A226B65795F67726F7570222C226C6162656C223A224B65792067726F7570222C226B696E64223A2263686F696365222C22756E6974223A22222C2263686F69636573223A5B224141222C224242225D7D5D2C226C6576656C73223A5B7B226275696C64696E67223A6E756C6C2C226C6576656C223A22726F6F66222C22736F7274223A312C226865696768745F6D223A6E756C6C7D2C7B226275696C64696E67223A224D696C6C222C226C6576656C223A2231222C22736F7274223A302C226865696768745F6D223A6E756C6C7D5D7D');
INSERT INTO "frozen" VALUES('c0aa91e2c16d6c2999bc7e5fbfbce9accc336c1d764445eac4615f67d4bb3891','rules',X'7801ED9D6B6F1B47BAE7BF4A438B83F100A222C9D7D8D8178E1D4F8C7112234E262F8C81414994C431456A48D18ACF62BFFBFEFEFFA7AABBBA79D525B358600F702616D9ECAA7AEEF7FAF8BF7686273BCF778EFBB3416F727A3A1B5CF5AEFA9F07E39DDD9DABE1D568C077EF26C79F2B3D50F99BAA3FAB8E07E3ABE9E084874E86B3E3E1E56838D693B3F9F4CBE02B9FCE065F06D3E1D5573E1B4FAE067C72D49F0D675A68727131195797D3FEF1D5F078F0BCEAC7AB6757FDF1C9AC1A8EABABF34175313C39190DAAC9A9FF1A0DFAA7D57C3C1ACC66FE3B96A966FDAFB36AC2E3D3EBE14C6B1CCFA7DAC58F833E4F0CAAD3E9E4A23AE281EAB47F3CE0A713FFDA27391A9C4E78446B1D4DFEA886B3EAB27FFC7970F2A2BA66DF836ABFBAE6BD836A78A5EFD271F7586334BC185E71908FFFE4EC83D3C1947F9FF647B3C1FFDE4DA064D9F10A20FAAB068AF3D9BC3FE29D3785E1B327C06F70D99FF6AF8693F1731D747C553DAB8EBE5607D5C1378F80E26E351DF44F04CEC978501D4F2EBFBEA85EBFFDA93A7876F8F8E07975F8F0B19E3EDCAF2E2E76035017838BC9F4EB2E7016EA4E87C66E07A202572CD6BF0ACC883406276740B101E8251F0E026EF3ABED6066F2BB1E5E9D0FC73D611BA0D4D427E49F0FCFCE2B088445875A713C99F30128AC77F117B004896E03CDC1743A99F26026C92E38330C8330279783F1707C56B1AD2F105180B71AF48FCFABD9F0C434DA07EC0F0D763D75FA223605151A0893F9B49A5C8BA13AD03459FB406351B68E67DAEC9FF5876055880B06B8100D5E83E4B316343FEE5CF747A34F17173BBBFB7BCF7677DE79457DC66FDB3B14E2F4EEE7DE9AD8A19A9D0F06C6CECB9F3EBCFDE6C3EBB7D5CBC3C77A8FA8E2AC3F3F1BECFC73258D97F89A5D0D111305C26A711108ADFC808FA713DF06436783C9C5E06AFAF5396406899C2034E2A5A32128391BF5011FB4D08789C703715407D2CD0E6E04E095C70780573D4875DA1F03A6E6E83FCD2F8E90080019FE38EE8FD96E75359DDF8A2A43D0542783E3511F515B0998C65E483FE85DBB982D1ED6E4D3229495E740D25DCC7A7D24C955718AEFFF18023048DE5F57FE3A6484A9DE1297C7374AADEBFE549CC3A399D3321E17376DC932995C5D4E87E32B90791A827BF12C1F7726C8A751FFD274FF64EFE1E3DD9D9FE393003BAC126A4AD2013AB14A025A5793D1007C1D0F041A84D845B544E2ADA6F800D564413C758005E3E928DB12FA4D41A45D7096CB913858026336FC6FFE2181D1C27840C920324FEFFC30B9865E00C8D858AD2EFA5FA521106297125379CFBB56EEA3C94C54ACF7F3E594D78F66D5C9442B74D4F71A11F1798CD0EB855AE89D4C8723F16516EA7FD7975967848EF523DB99145D01DED95408394B571DE15ACC98CC0BD0C36AF094247768781D7D3EE6D3B3C9A0E0A6BF4DAA232C0203E1220C8A1795F75861D12084CE2AEB40C82D6B88386B0B0F2B39AF059DE16C6619B1143A126A599FFAC1ADACAE8D203AEECF653C204526A39188431C31389BA2897605ADE1D426040422189EF33F0DD3BE9C7D96B81D4D269F5FA09AD83C30C9DBBC351426D39381D4F25228048DF8917BA49141967423E92C1D343342A611FD2DF1B88932BCB39A32C230B9256988707BC793F9B894C9EFC2FA480671A23880750B210C438BF8D9F14CD6F725A8967D81649049FE25E48AE4C438FD9D8459D2A92F4F4E84FCE3C9743A38AE25874CA364BB87C4DD8E0D4608B4DE310B4C713E7AC2424100EFF812AB4EDF4A211C7FC5CB80448C27E9F16D8EDFE583AC819E27EE0FDB413A23CCFD992839EDA3634468AF5E3B88656B23EDFF8EBED226A12219F357E698CC562F7D3CCE8BF8E2DCF52362FAAF22F38D24D585E952F1DB66AD90B8867283478B10F8CE5BC19F9152838A44F609F41FD052FED66C291E65C7E9495C355E10C426ECD95EF6C33E88BF3D3E9FA0CAFCAD98582E8F24D996B42908AEF049B49564DD7A6B77B46B9B1367DF55BA075F7CB781D6F9001FE82A0890E59628FD95CAE602123CE9C97660A14C073F0DAE931D016FF52B3F63DB601B1258B45B3A44D09CE89701A22204AB7620AD89035D8DEBE50927C8D56950B71D7AF84DCF24539CE967BFC7A62BD22C8EB7CD71BA149DA504D180B6F1E03FCD35AD284673DA8C3F51C5E90A7B762BD76E768ED52FC70EFBF683FE9D8321B30B1C3CA460FDF650DDD738C6E7F2FBAEAE27951F071686CF0BAC51FC23768D504FC248205E6903EF623D9E9E16F6756D3C867F2ADBD1F65435995F695BC267BD1DE994FB32BAEDB7F5B0DC657C64C2FD207F339400F60BEE155A8B7327D59894D5DD85D8369EE68BAA3F9A5F0CC7C3F9458E0F08F447F3E1C880F1FE0BD3E11D1653758EB5958586B0E2A731BCB13E92A169805ACBF805DBF1C311F1AC13054F4A58FD80D3636FAA8F3F252F526FC581389A8CC099964C3F68C1CBBA832F7B59E502FD22A2D7E5960EEBE3A4F3768EA9A51F7F73F0C4E1A8D9BFE7028D963C1D4E6757A24A02548F1E63696175F2E8FCD2DFF68F4455078F71D89032213814616A78EC57E2933C6A3F3489B01C0992219FE259C11009D0279C591BD2A2D8BC881C7DF1AFE1993E55D8B11DA7FAB883633F1A7C626B3BBB877BFBBBB5FFD47D9F7801271F7ED151743A769E4E24BC29AE727070D03B7C240CF34ECE19814CC5454F76FE09B39D0CFB443706D314C979D4AC26AC8DAEF2DE8BB5C47172FD4294CC867F5C7DED9D1268224420692EE3EDF87C2D93AF54164147457CB160BDEFA021DC83A49C7CDC267E359B63A4077C303AB2117517C23A78B21F207D7250063CD98128744620F67CF697EA646801D09F7EAD1EBC7BFBE1D76F5EBEFBF9E55F09C26587BF6A90D025A2B0852E6410671282424EC52159010B1EC12AF551F7AA97662796985496C739D8331813AC391BB42D8C8F3BF5568CE283BDC7CF9E22D6B358D50A3E67866B83E82E0929CE8E355CBF6F9198C42A9FEAB8E0C3BD03ADF4BB628284BFA1D4D1E014D1B4243C18515CB6723BB239EE1FB1B7ABDED974785950CCABF8384482BE0BCECB71BABB504747EC2CA036ED289676F4AC0FBA09D84DF9E8E4AB8EB939987FDCBFE85DF4AF8ECF5B67BA90E9898F3CBA1C0E08C4F8018824828BC880426EFE792714ABB1BDF6565AD63264EC2D8D0703649C84937F93FDA8E3FE744AFC744B401026C04B13AD96A0F0A77E3581BB33D86670753D182808E6FC83D63C0F95F4E701820C526C03A46817E0A3E0E78C0B80119B6A9DF7E30E36D257B3E5C32CE7896BE0342C792B660F224E3616A06F5EB6D2905A2963F39E7AA7A3F9AC455A1937FE2262BE92F57140BC01E17B9CF251E0E11E819A04A0D0869D402EE88AA45A4DC98511D352BFF924C895F1D9D5393B6CA1A24D5C5D41B8BFF7F4DB87A524145C452E0E4F261313CDDA4040B8EBF0FD2E00C9D8A82E87625529D5ABF9743CFB7434F83A51E4CA3AFC577D04DE1CB70BDE91A4258700D9EA39E3551C23C6718653E6C5D812B1B3EA9AC06706090A795A3A5CAF326EB3DF9B2CD696A7CCCAE967F788DA0888B6D649F1AD90C679C71225363B0DA3A51EF9ABF0A81536C29F4E27F8AC944C0DD7F63A8AC5B7A96033575C4E27FF22B684555F889A5F2D5120CDBC5B40D57AF026005BF45F5731711D8B08B2276D0667A042F22E82474F07D77C6611083D2A2B499A924FAEA6C38BAEBCA90F17C6C0E1DED3C61458C2009C714EC42D32E1F97DAB76BB3A7F31984F27BD16BCB23FF57DFAE6546ED5797FA450DE0084069B101CD4A2779435B255A16CC59875C4D3E11F92D3B3E3E9E07AB7CE4B1F56DF54DF93A27EB8FF5016FABFE7B2901D5554C4F245F590647581F25DBEC2D1544A874F15AB3CEE3A09E122C4998C97F82043B156FF1F773E0FBE7EF29F6D55A0948936CCD791ED95C008C1E4BC8924537EDBE26E76F94EAAE88C84CA0CFBD48289C7483E148B1DEC67C593578B470A21B8B0D6CDF17FD627D26AB7AFE0A9EFEC06CA6320E34B74D3CC2F8FC81A5DFE9A0CA6946EBF230974046824C9FB145B9CE3FC0C8FE509E7B00B2B15C166C1DF1E655DBF71D51F4DCEE616CB050AC7F32B23EF99C0F9BBA4FC759F2477C48BF9D26941BB477E1DE2237496F8F3C7670484E3E983BD273EBD7EF1640FB70DFE23EC4CB8F1ED879FABA7FBCFBEF5D7FAE3D1FEC3C3D5D513AB7931C87FD6C3D1152D14087963C6C0638F6F8875523543D02F5885F4139ED50DF1B028EA3A98785ECD06809B6A1DE5B7C4FD083045D7AEA17569636A0F1C1C17222EE74723900541CECA6C9985633A564844B6DC7AABD9EF58E127311452C56F6EC9C6958AC1B47BA18C0852A380D6EF83D1490F73A8A15DFE985D0D0623F63F521DD24D74C286B0066F4B449934816852AB8B696E700E87748A43FC2D339E8C0E6C0FD97782747EEE4F39C20FD4B2405519A6327360FF6BE089C44D7C66A8CA804F3176C9BAEBE1092186143EF10E43DD3922538D7128265284DB8344541009A002243FF061B624C57F02CAB4C0729D12EA44670536D5B6DC11F1590CBDC0985D15E68590B5A763D209143F95FB6013D34109150BD5E47FE6E0AD8E9D4FA8F7E88C2D1AFAB8E3434AB959A85947BC73810F0441AD1C4ACF727BD99B42D12A0AA480BB0D337EF2D56658E748CA8321294FC87D2B7B09EEE7849191C5A7C4E4D618B90DDE94B89B5D4D4AA7BFC45FF88642618D35A3694ACC0B8A4FBFBC0B916774091ECAEEC8B27890423E42D0948820B208FB5E212295C2111CEA806181B94BA4E5A0414484842E845B8AC22F03FF7D2352F03A0AEF3DB92E821A357127615977CE7227942E16B82C476612520A96FDF9DC96046E89931BC0FF8288DC707C5B2E12F0534810C45BE441B60E96092536C49C4416D63B9858C33F3A4BEF743EEE7A396FD247D9E0CFB5259F0797CA8BDE854FF26ACE07B8E8EFBB1F7E7C59BD3C78FC64EFD06CEA7F1E3CECB24B87390C11B61F7A5E7FA54D0297BC86E51FF50139F397E4241C9A9FB05DCF6F43B9B45866A51D60A05D0FFAAC292B283B30EFB49956CCA779E62E00EB60332CD60B54DD9493465D9E0B7097C0C7DE31F510D299833FF01787100FB6CF0C9F76BBB35EF4CF144EB5862ECEFAFD08C71837CADF62889927649F869F12E2A83F2522A90A68B8543BB8572EC56AF0E229732243CBF68A16095D7344885A2915428E69231D08F571009DC3042847786EAA16B69642EF8CD06ED820D697A2AD588CE449635DE48FF8B5423F0ADCBB924D3BD80EB80E724D55C199409349E917F4B2D1AB08B137918A5AEE01841D725A8009195F556281C9D89E79C8F8079644A85C6D6CE6DBFA9C6447879F07BD53D754E4330609413BF12DB8108928C68D4532C7A4C5F109D1868A66977761A146C23C3C28440C39B29C6E51B48B84CE0A87F6C5129FD0DA407048FBCF94534800D1910EE42589C5285254D7CB93B4ADA89C87C84E6584C8D891E5C3D1C52F4478DB96D84A69342389311E4C7BD3C9A40CF3FDC29F32A167D73244B014E2B13B02B2433C24D9C97853999E5FAF5328E4C9A92872216F96B3AAC22485243CAF500B27D7AE90C384E989F4549713D7DBF29B87FB2F9C524C619A25C5B16D07E894D2D001E74F11550E8A1816232BCA1AE96C1A34F8344BFAE37EF2DB5D9AA37A13CB8D48D9C2C3A5111DD4DE62E68F3B8668E4649F14F6B0D3AA2E6CE0152A8258029AD9F57C7CE64609C5CF211DD57F0A0A90D1F9E08FFE99EC99680F1923AFB57007E20D25EA77645CFD8E99433A82E9A762770FBDBB5F45A222309E5F0177B3385F47041BE30E2C4613CEC61DB4F017BB9010FC740AE1CF76760F1CF17EE7A07C6C20D161709ACEDDF4D84800242828A8165E1ED2FB18B72422C47EABF6B4824FA1C748DB437904E97C6200484AD01AB2A652BE385018CF1BFE57FF3A6FF770EF90988D9D4BFDB64DDB68DBD06B77DADAE1B3B43301BBB50FA32FC34DF536AF53423ECE618E49D0BBA7AD64202D6C45F191C508E44CDD0F2E396EC28F92D29C4288743B87A5602D6D5280C65CB1166DE89CCC052E2F13F42B85BEF847AADD90C3F3E3B335B6AC12A13D74562B49FA6B9D1DF537B897089AA2014B72A9F63AFFD5BF6B803902AD390CBC469F08609BA28EC9DF6887F8EBE4719DF735F72E7E2C7817614958B07F36B8209D64C47EBBF7F8B0C8FD6B3BF50BAB8B39C13EC3AB0DAD3528DCA5F3E8194F9BA3143FFAE4C61EAF45A1818AC7E8F3C9A4A207D8B6A270212BC5FA755D83C44F2A418A08706AEA4A62B5BB5192046B36465831AF9C64439402AD2324A7787A91C46BECFBC8FCD447C869B49C75170875AE3B6AD883BD83C7FB0012801E0212D960CA99F3C9F139093407F2337D550F5E7EF8F1FB6F1AEBE6F15F57929C5449F4252E25ABBC7B244B2C6AAA4AFE92BE3429812D7523E68711880EE0450D5487E00CBEE4EEA6FCEA7BA5456B0002AB7AB535083445C5CBEA7A93F4DAFD0384E4E0CB30847B98ADEB68C1AF6A95391D7EBB77A8971492361F6EEBBDD52FEC6E0F5D72B3DDADB4F1AECEE9E8EAC9A4E9250F3C5BD1BFEA1B1B3B5088CD897B70D1176C8EB7DFBDAA0EF6C9101D560F0EF70F0F20B37628EBB9EAD5959DB2621608A387C3D64987F40CE0CC3D2920E903FA18A6BBDA65C716194B3B2111AEFB638CE5169115F0527B5BDDFA7AECCEA18578EE6F6AAF6985FFE2C12EC7BA5C5592922FB6AF370CBF3CDE28DA195C44343BD59C374078EFAE2941C1FD3EE16BA1DC48BBF121FFCDE9C9FA5DF8AFAD7377A3B2878F4910EDBC5B08CBD66B2CBE528E25B282659383BC8603379D6C758649F1A99E4ED97570DF8E7B8E5D1902F6DD43B290D00FF33D752DE20DDD0F7688464E266471D12C5152422E3BBC2CDC0D2B8848D8C81EA0929616BD11C15915C4F1FFE1B5854F2398CA0B07C58EC134784D729548922D211DCDC41C3D39F977F5CB5A182D28B9DDC54D15C355EF0419779C1A54582FF3FE6F0BF4ACA771B9F4F4FD802D505FBCF626948DBE8DF4C4D140AD5D8240EC0DB0A4C4A288CF310EC17D8AADD6824A97CEF1262852D886CEDB3B5E586185FB10A78D3D2E3BE86A42B70BEFFCC31652C70FF3FE6549872D65CF2D920D181175FD462260FB8A6B92103F96CE318E695D082D2700110F77535BD049BA21AE83EC25B623879896D3F36BF19BCA44B741F0BA44C45AEC7AD801EDF33256C9E55DCA1CC17856D4900F448F464FB23A225E1FEDBD6F6AB91C3559C9ED09585CA27DB3EB9E8E6B298090A92BC053C9C61A49BB9BFAFAD718A704F9FF1BE86F20333589C96C54A5FDFC0BE9FBFB11078DB06B9386EACEC5DED1C6A6650548D177BBE6EA760C0D7A388EFCBF384CA3B7EA1556A07C0D1C9593DC00C4A8D2D1837F36F8226AAE95EE833FFAE3AF318F042C2C245E6F0EA9511FF9BD01547E2608EECB504568F704B117D54F6FDEBFAC9EED2B837AA982B7C7D583B49872C930EED9F0683458304857512A71408728AC8E75307C36CF4790A3752FC027E4ABD742AD01094CE5B4A6ACCF663173E77C1626ED2DB0A2D1361BB022B9261FBB66486AA295206F85D2B7D4381D9F60157C8B7890D7969AD3AA6B41FB68EFE993C347DF36FFB759C9E7A301667AD88F542588948B8C4104A0B56267D30A52B80F48A5238EFCABA45065BADE63C4741954B0D06823203AA04CACE8DA99B39B238C68D6D218BDF65147ADE5EF601A858F4CC5D7D9795D2C770F48739FB54B6C3CB044B1C69CD0D1AABB7443EAA40A429F0F2EB68EC32FD705F1460EE71881A3EABC95522ED5F529ECEEFEED29E37EF44F91685DE003C7A8E531871A5C2EE85AD02847B75581252F05BB9B3AAFC4CF7626526FAD5FD83F3E265F6DCD744A6D306AB34386912B8820D5B77BFB84A95E46B0B94648C0224291512C1606435402AA66256AD0BC8814BF5658411CCFF3741E5EBA2ABA092DE276E07FC4A66CF0BEAAED8DA23E12C6F21EBC96A74BC9BC32E548F72A12B5662B32340E3178D628487BAFB46E4311B39E9AD63858DBF3F057E13F026842F4E9A97BA0D495E2C59C08AEB594CDCC988521F4EBA3826A4C0DB17DF6D8417C3754A34852EE83AADF95ABF2B3B392690CD093544312E8A51D11B311A054B6E492BA163413A139919E1FB8574026F7348AE300D67C063F281567402D5AEA866EABBDB10343EFF2D3E6B2960CB626B091CB57864A5CDA8DB80D24153A5A4C9DDB298EAF6A9E044D7F062873F18F0128291E71D090481D6089394B586DE9EA481E7F8D329FE46E6419B33DDDC9B2C154885C664FB244657B0537FFE207B22610BA8A87EE01700A0E46DEC8E117EA6711F889E052382E0D37932F464F60B3C514B2769DA83686F68562687E8870826D97DD9C2C80CD1B1ACB2F8159C34F958691AE3155044C9A60604740AC0CC7148158EFBC80A2092F1D472E6513D2B42E4201D1F2C7D8089571B3D3FBA1C917BC8F3CBF6C88BC80CE1915E5A1A964B70458D6E5D2DFB783921A74274B80C29828F848B1ACD48C63183607ECD0BA8150978CDECAB86BDE8D84BA916967732EC1C23AF4E1B33D84BBCB215226392C2EC325D5F728862EB8C5EF9A33A7C10B90EDD174222E52003127D1A7A95CD9FE046CE9D93356342BF43F4AB756BBA935CC3B8CD158EFD413AA1958E0AB5937157DB2ACB4BA75B2A0BD6285E769F02219CE0DDA5DDD221BBC073D723F54CA5B1223B74CC53A769405690E1D1569A7DCD5526432EF4C5E7A67F46E633DD2F898F008B15FCE478E4076846BED37ACD1EE52026AB5EB3906C2895BDABD2E0ACADFDE8B58C5BBBFC4483E497197A339030DDC25A1409648D5C691C7EEB4737FD658AD82252886AEEC23AA93791D7F789F36012C63CDF0FED5AD0AC06AE08C270BF0F92ED6F4CB9D09C012BA472835B4970CA0D6D9DDFA1527967AC9CAB5A6B6958AC027C2968BA45B17DDC998ABBFBC076C37E7E888EAD65AC9275AB4E64294632F4577A93AF35B527BFD414D033D0F8B2B8EFA46831FEB0A3A4104651BE4921FBDD783E7A136F625A1EE0B66BE757DBAF5E7680A729773A768A079E61E361F1985ED8A754D98604E82BE5BAC5B70A238DB99DEEDF07744790403424F867385E4F2B1AD0EA50713D56B30899E5C08DB31BDC09E5F9107C59893F59887696ADE477535BCC0F7B48596323B392B8EFE9E552EF3FEF5EDCBDEE327B4C5F55E131390420BBB85DFF73CFDCD6BB521161B5795B3BA0C1A1EF8C55694D6ABBD5EFD211750559CBC1A0F7E34C07C8E124009F6FAAC2EA855A0AA5FD132DC6E9AFAB8134B86FB5D94F7093A64A804C788CE585AACAB36785E3DAAFEA80EF71EBBD06C2561D21132A6987A82974D29496997BF1FCDCF22A61A710A651CFD408B309760A8DB4226D0980635A6C4835C5D31A15A2803A52E896C005C0A4BC8445639F5E3D01DE2E6FA5C7D34B9CE528DD57ECB25DBDD8E2611B3D0A42AB58CD34C94EFF838CA8ED21BC5116CE936C7AD8F04616BB9985326F34A2C4EE038B41F7F6BFF2FEACE5D93E40C6398919236ADD1853A98156ACB8E5E809597E94249BF0DBCC9D5763D7E2A7948969D7E15AE36D13792CDB62A633A6CAD85884FF2CB760756EA7477A9563D4F45D1913443C0DC6CA3D6A711623A568D2D65752A99D6EB1A0276E35F401CC7A339E600669AE25C79257564A5A6EC081DE4F076D8EC8519DDC04DABAF30596514AF8D434955F5EADAB00525F4BB71E95069C22D9CBE54FD6CC1285D0835766B8C5E6D56802706C06742CC52631B62DA48F22A0502912E1414AD271247C123605B9503F571B6E317E8D5A6A5680548667ED1D14B199EF38F8A8BF2D84DD9A673F8E7C9AA44D122F1B32919E234556C40156E42B7201175BBBC8BC60112F939D531C2BAA24F9A6AEF72A262D8301D7801C7567381D9C2D16331AD4057174FA8BA5C7AD2526D3B206A648CA21F919BCA307CA9615814ABABD423BE348E1586034FE8132A17BAB0B496E1C3422776256ECECF3BB97E69651563B776AB1F117B2A30F9CAFB7F80548E18C6868371806C1A9C0C356D02AF64AF3A383C103E0F0E0F59A965BD9751A61AFFA2B7DD22FAE903895E841BDE6308C6A1A2C2E6064023C8962392196CDF01AF504DF136257BA1C6A44FF2D32D0ABC11D412C28189D85FAE4C873ABB40890EA4245AB33F29209888F2E76968461A70D5024131C5BE159B93CA9D0EA906CA4C1E23EC2C59B5CBE5B1CCD5C22E55C9AE3407B4675ADE5B63AA7F170C1273A0894D4941B37722CD1B00F9553418EB1761E0A768A4322C29F06F404B9B9AD6688AE9BB92DB8F6F0569637A099469D342A01546D7BA1CCB1A0FDDCE30940CCF95A6F04BA93B872445A1596C359EF3ED8938A68D0029BF4C852584EAD605E1C2E84AFC2D23A594EEB21F92CD7094A271AD8073FDB0444107E0DEC0A7C2B23DF4748A37DA503FB68734EA33863AEB90DC9922219B72057AE78A237093C733FD92EB3C749187DA2422F838150DF4A235C69BA80E0FF5A0BB206C80C4D674B030B923FD5A768CC4EFC4C2B2D9B521CEBF7633AAA0D622FB6A70F02AFCC2AF7FB8FF28AEA8D094A89AA4A49D0CD326E758DB8FD5996751B80AD5448FD2CBBE8D368115F0153BE012D9DD7F6E04E955F6119EEC565C637170685971A082A317FA4B42123659977B13252E44E77E9073D384AC67941C71394D4861A748FF53C2A045A6210E32A12EA13DB175C03E8600BE7399EA12B16AF693ED84EB16678326B1B374B6D0C59B329AD180B052B43650D5B0801C63CA2AAD03DE8D15547A9BE4C8565640236A1127313661B34E5BA9E83BDCDD0E88AE2A92ECDB3B0E21D4ADA85AC34D6B046A1B9E329900471B9C42A7AC90866C13246405477D55FADDEDC56C035B6B903BC015116BA99B0BFD9A0D76205ED37454066E41D20997C9AE74412AA41DD2153A5A8300FA446BA90C280538C53C36E245D9F9D6C4F5DFD00B98517CAC1831624C9042A266DE159EEE2442569A68ADA87FB4FD0869A29F3A07E081A5EEA40E6F788516EC20A29B7DFE4EF525D7F8AAF4996809C9A3B29DC913AC8213802379000918858A261231A993A8738E34C8C27465980A706C8F1688CD425CA8EA659E2FD8E3C76C567A106AB6ED0C925BE0C084EF37FDCF3C31B6EA1164CB4D75009AB23918747158AD26D4022890BF8DB1FD5A17A82C762A44861550DAFE4B25058E1AA4999FCDA012B6D2C1E18D9949FBD58A6B98660D77C8D46096F7A4BC07E677D71A857D25F56DB533D2CC34501D8D275B60059A90DF9D03A38D0F581B825A3614B6E22E0B4E8D965D6161F1DEE4047EE746D062AFA132ED623B9D81BDA438D003991F7AA34D0E0A24337A54AC9BF93F396C927A7ACDA50D2C935007498A85598B3B24EAF0B11A8D6AAF288C3496D0C1FC2E2F91C2032947213B5EEFED3058EBB2B7D535F6E48EAC717047BBBAFBA74928378E93BFBAA93EE9EC8956BB1B27D794C96AA44E72BABD1F0344F2D55F3B10550745709DA363C4188A410B9D40480B178579D36A7A0A479C461B99B600392BE257AC1B4536B5A40782E21F4B479EBC29A8B26045620A482E28F42588B5E8B545621E45C54588B521E0301FF3A9BD091F3D7E94995BC679E85F46279DD079D0151B47D3216708A7216AF7BA32358F008E83B2DBD45B240AB5CC733C64AD14214D2F4895953B295BBFB4D92A2D601EF60A29DCC798242D4A99DED5C425DEABB87C35F5F30BAE73348C0AE4BEE708B4D506E8924F9E6C0CFFE016D86DC4964E20D115AE9CDF07DC301C28B8D55C92BA47D7AAB135A2ACC5D2B5E8DAE038C4408622D25A9E24028F7589285EA92F2259C51AED2EAAC41BD234A5EBFFBBFECE5E60C91435ADDC027E829ACC8EA5DC7142297448474D7E90F99748864B493B606A3148EB98A403F875335D3DF572BF6B5438F2D6A368B217AF3DC5429BA85DA1B1E6CD2BCCDB3A8DBCC53B0B71D5C6897555AE4A93602FC8FA8326B22A23E903E84BC762EF669E2686DCC6CCD940A816576A4B755C31A4948F13C1B16ECF4B6DE0E489FB81A9252E70BCC41AD40A6D0DB654C1EB5AF635A64E80B82B3312706B99212E23E7739FE104B703C761900D296A85E850EEB0491AA4B67EE3C5A23833C3838E32FEEB226FA4486EAC91E332165675B8BB0EE1185D5BC7CAE8096B0C9DC054B6DF4310C69A96E01D330A4DEBD86467FBB79D84E785964C87FA10DC61DB2A87DCB5F42D845523EC3B7BEE423CB9638BD11E8525EB819BB980EB4FE60DA49BCC17AC4D4569EE854916CCA6046465FDA3DC224C06C06C7252D53FF2FB16205F0968DD68872BBA9AB2934559D3754729C8FF5B13684B8E26DEBE46AE9AB6ACE6E097351074F4342A29C2D46ACD0997E7AC220BF7477030C474CD7EA24845612F34F7232D18E643EA98581BC49578DB54C28833B5B2A3C6FE08524DAC921C2289557927B7C059C326F7EACA6DA3669AEE99E44B212EC16074CDC001AB1A683AC4E1F1ED81C17D464B37DD0EC864770922A7AF149516CA42B2A4562E19294EC044707CC1F633F57488BA34FF5406A3C8B74B48F006A2BD3A278EB5C843ADF9B07ADA0C90516792371B06C8AF324435C24AA12AFB1B14F9A42A4E35DBF157EA3AB46D555F162B18ACD999684C7B2BF210FFA11449B1E27F22F34144221CA5ECBBE4EC0738613A01D3B168327002242C2E2261CEDD45559708A0CC7858F32DA6B1A83D8EBBC799551EB380AAC7998B2B5DBE653BA0CEC6D4E75E48C934A18DB0B3544C3FEB5F4BDC33A3E132D2556A523345A5A224A1FA2EA9181C3D5D0B64A28B5218B503398E887541CE17CA15208ECFE74CF9C4223D5936C6B8A47BCE9E698B918AE3CFC17C076A2E7C5D8C9BB10911BD854948AA4BEF48C1A7B05BBC18F11C6F238138CF8A63571B683CE0ADB795CCFF26127F968E623E9960128D8409B54C41158500DDB0D2AEF9BC58AF8BE10D8B46EEAC58CFC74F9B4BE1A5459CAF67EFD020E05687FBC4D4F00C85A74283A358AD9E003D163AAA859150203AFF4ADA3FED5F0C99400AF47E7CFBAEF7E1D7D7BD83474F99CA7FB0FF9422C08383A73913E99DA8BD22D143B39374F19C3A4C2DE80853FF87B65363EAE030553C66015110867D9DFCB7D86F3BDAC3AD601C2069D8DD60ABD460B9502CE6C0C2C9143E87FF9D3F4633004E319D1C404B76F19D3FC9B5862BF091796FA5F319F33ADCA90D5673A8ECCD10CD9ABACB59DA168C501013213A8132AE0F24B23F9968047091035CBCE72075B0931CB6F1E897C5695260CB3366BCAC4A91E4B847B043C54D009AA373CBC1C5D1E8EB8BCDD1E15F0697CCB7014699ADA3632A4F509B4C3F4BF372917493D550889E75310066FDA1E7760ACB725A55F95703246891CDCC49C4EB9A06F1435DA25840BA1D95E45A67A25613156AF73C09A780F7CFBA6A5B9A214F768B32604D6F5238A415975C01EE558557598E11091FF52F214266A0AA26853BE4EB9902CC994D43059E48E61E834BE9424A71D9908C2C10A6A61E573E7A1893F6EA435063BCA998C33D6BD0720C122E5F4E79B23AE0A4CF74B52EFF1598F3F6926997045F4A41CA96E6B91C40DF0EECF9E6EC1ED654A7D4F66D79A9B6619566D11A03CDF3B74141A2F71674DDA09CC0290DB3B0DA16A4FD613EFD42FFB815A615B0C1960F69EECA5DE3F25685724D76A41C4543EA5C21A1CA7081DEC246939D1276720A54A7DF8AAC3DB8D774DDAA607E99CE65C9618A896C4F0268AA5A1C8C165CF52DA9BB0B5A2E36B524817E67BC35339A3FBB84E77C8FBA17071A3699397CFF5473342EFA786A83B1DAF4B680BD895954EA43F16BFCE29A8489D3D9ABB4D840C284F4BAC2A6440C79B534F236341A5EE7912A3F754D9BB94879CAF44FA9680F14BE09163C232CCB70524129A40ABF28B415B59DE82B8D54160367E213926E29656A3C3CDA3BD8A35CD0007FCCBF1F3F877DE3CABAD805E4E758459A689DC8216F8B3F21425CFE4BC693219A63827A0C10990DA6698E574AFCD5779E39A91D8178DFA8182DA5529204B399836E9162A2D784732E53614F27C3D321810395EF230EA7540128AE51F54FBEF80E0FCA692DEA1156E21B763081C427D3ED847C708336D0436B303B5C3E7646C8CBF8C44A3C150AC7D86BC1FFB9A6D10F4F5BAB6F89934EB6B58D92EA01F2F370FFE0DBBF36A849C30B0F4985FE6B72D4333914F3B8091694B7737023251B49A0FF25A7EE023559154AFB470932342D51622E0B5B3590A227998C084DA82C12C35AADCB14F8A6C2F068EF16E06E40EF86B3E21005907F30F23BC4ED2205D57B8427723B857A67B892D5C95B800575610C7879C2709195D076582467FD42562F2B2330999F115C0AE512E037855D639E888C05FD04E93E068DD2E22D3877EE3C4E2D10BA39972441C35568B23CAE52B0577796E68AC4E49E1A3E0BE72973792D9B28D8C562B940614B77DC8B0676CD3445ED78F7CF118A1D75A0F9F327D0B5A788A842DFC50EAE737CD03D4B1180FFBB3258324524DB43C0467535C2845B44D0B4DEBBF56DE04E19803082B29A0500A0A7858A55F6638215A2DBD3F5C49359B07CD07831D92E925C91668F7578E65EEC96476E81D0B4355392036131AA7F9CF4BC0440C8F058790B4D7A03035D2107A272519B3292CA8C2A0D3E44F851BBA5D65F4B6E3E91FEB809445141BD1A5C19A4EFA4981691254D1F131AEE065A0D8F3D7882FCD559A47EBA74D63825FD93D4889CB575DA004D52BA4458B8B09F6C8F2D58FF45F5DB3BFCED878F8C2DFE7DF8ED235C9AAF0296AD41484576166748623DE2AFA92BCB4D6D3ABBF03D26DA487D18455A27C90BD065DBE99D507F5E89FAB3CFAEE460B465BABBEA0648C09B75494B49D5EF88E2F72C3143D67464FA960858E985EE568FF7FE301E1E3EE79F8FF79E820EA50662CD7C9B4268EB752AF14D1482C5E50B49B95B10C41CD5FC22D12F193F5DB4224AA638DC7606AA1F95290CE62CA8A579ED2EE54F25A41CF04506F7E7A3CF923CAE3D4837B79815202719EE61762699A4368AA8D3C3692A367903EC5CEA1294451EF940E019BF5CBAC54F6826F778768A96FDFF8CF39F621C2EEB1950B3063364C985D99F3EB4BD1FC66DC3C07734F41BC1150BDBCA28A5C33A4E79DF1EAD32B9B42A4E53D49361D198EC993D9A56B7254EC10DA87836E897958E7FEBCF5430041BCD2E2690B1BEC6ED60BC893A12EEA438CD1236870EF6F183CEBC928469E1F067294E0CEAABAA9031A7FCB3C43A16206A9CDC185DE99414A7F9A33A4D1B946E10CC46820F2B8DA042B5D0AE71F93CFAAD7D1F162536BCCA614BAA6B8A6C59002CA5E294BC2AAEEC76640FB1A6A9A49AF5A6760461AA13A36E156C2C310CE33EA182B6BB3725C9874BA49DE179AABB2FD0A69AF07F37246AB36B6CC658A87F0AE5580E86F52373A4907E80769D0999D46EB1E7F4B2D015C8F4E25DE2871BDB8B6699981D9E05C46FBA9C4CE5EE0535DE2002B046A13A06D0389CCFC38B4F4B79EAB87405704D7C1F4623FEE943E7CBD6898EAD8DC517899C81167AAF7F6363F1E34E0659A425A2A0F26FD869CC11BEAA4F246ABEB5C3A3B0C5A23AFD4D15FA8BF8FEFF26274D217F82C9391F6BE4EC82D5F99B3F5E1EA3B1F1E690CE9DBCAA3BD99DC4377D9F72B6E5EE6856E6F6712A7B10C0BEFC523678720B72B093B96A98ADE163C93D4EAEA6EE47F10C091528D6814FEE35B323A1A27EC53BE0448CDD220211E9B28D91FB6C4DF6E4B294219E5FB399E92FF26618741F1E8B3F95F289C0D06D50D5DC231301CD9AD3FD6E4EABCBE72907D6A1AE5D2120F3BCDE4EAEB0F33308F1FC772BC6D6D58535D0AD1424EC3300D28BF17FF46967E17CFC58DC2E062B5AFAE1CE44B4C12317F03D22B2D132993EEED00411924EB530740D45062A6A8AE380BE054C2340099D62DDABBCC1F59637D2E8710B0A0D4084A1147C2DB4FAEBFC99CE926E4B593AB722BEE3974596B19BF65A7241CB15A3489EDB6FD7089FB0A804C9E26216A54B74539DAB6C3310936D03DC095C3ADED970C63B6615E4D91FBE6261363C63EEBD08A278350E1B214E7D285B2BAE0D90B1572F7539985CB225D4EF972D039F749FE81E785D0A5980909099A61F6A9890E27BA4DF17AF0BD91E7AFBF9FED964C31EEC564FF78801459076727C3CBF1C220C1697DCC25C7D35998A024A284D65FB2691A277C2BBB20C1AF315CF97563D8C3DCC644F343181C7FA0C0D2294912ED54E2559111921D481639DE66962646C0FE48054CF77AB17407EC51B48889A1D14C0AB01DA1231F5A70591AEB099B84848903D245D72B8F7B07AC03D572236DD0B495B38FFAC659AEC33C213AD281149703F4F9258AC8D2793EA974248ED566F7E78599DCDC9238D98B241FAC5E98E3F868A2834849C4789896AA3103A0E88B8D047097E41C4D192938348669328785518AA23563885C5CA33BA709FEDEE94B0B3DD292D915EAE5F969496E0D13DAE0B6A3244FCEEA70700AE7D4D61FE5ED87605F2B62F1614FDD23C8312A0E6CCB3AEF5D4FBCCC92EC39046D2B6DB20464B9E31AFA40DE995C1EF41FBE6E09E527405B52DBB58F839011E36A2BBDBE9B0F2881469EB5BD05F2D260FF6BEDD7BE683F95A2BFDF9AD9D7CDDA016375DED1D8416CC7F35575FA9263831EE8C915813DDC39C77084572D12AB7DA8695CF65598F52BD4141F6089A0E9A5BD9A657E703C2B0163824E748E7F5698E85D787038AC1F9612D73F3A25152295A6767CA88448ACF434B6CA0B86601ECC9A23CEA930227379BE3954E60C97D28FC31241A9C2E9CCFE6640B19F1A1C421962372F60BD716E2E12ADCA6D01CFC7A329C90B585E1E4D3A73D75F822E0F4290DB8A11608B8A804EBFB406768A7D010689D783ABF4AC2BD81A95E2C34EA0DA1EA858B98180A04DAB262B5ABEDDD6208D7722BFB89AF750CC47C7C717FA4D7E5C8277B072FAA9A1E617E24E1B2ABD5A00C622924A3C8757C8774DBADDE324368B7FA65B7FA607CFFC68CA1111542D2214E87F8E1EA7BE82425DB9E916CBBA46BF4F348ADDF20F6647015E608C28E379F69B006604DE6EF02F9D53FF67AF58F09E51614E9EF12F2B721C45F11B392864ED1B32727B55D69A3600281A13029B226A320270C41234E915D59D91D2AF3779F900D078F455CEFE8F495F7EA8F5F70B370C5AF744F7854F748D0D7C54C392BEEAACE25B8B218D6B058BDFE61F9764F90B55688C2AAA41456BD03C63A1E7C1AEFEC3E79A2CBAC6A17DB9F838F688FA1408BF760733EAE46474B253AF4E33D8D984BFC290CAA9DDD189EF23ECC2BC7D082A7286ECA24626B4959BECC4859BEADA0BFAF5EA5FE79C9C2071E22B38485EBA729DD53ED4DA84988FD0E0C6BE974F495B4FD49E915FD9EC6C2A4503C284D76A0490415B68DA2E85AD35DDC51C7DC922BF02412D2213745C224750BE109B30DFAC8EF484C8ABE1127DA76E43E42B084CD1D61504FD4438E2A8FFDA2EA284833082290B04EB3229E18756A1A3DF7007709E14B45DF103B6656246ADFA10744E2DA000A4AB9963AA72EAEF297B6FC0B42292D73397711E493CCE8A327CEC6BC13D693889E1FE1775ECD57DF52DE8A6CEA888BB37209DAEBCEC854808886D17EEF6CC7B7AEA99417B4A880094F2B05E98A5D40B1D2412A27850E946E482292B85C1DD4B70003217233CDBE02AE863D0D06881AC356C732A443F0944066661B149C32491EFDA6AC13C4136657ADACD9AD3D03D5255B319B68FC52DEDE698E5E954C3FC30666EEA66D290E9355DEDFF838C9E1B4759C2AED39353EFD3F8498145AD641E3446B30B27E8A6E8B7CC16DEF62D271E07F06E1F1A14DFA34DF2BDEBA8DD459748F4A73A0B6065650F0DEC17E472A7DAD1ED47E40589F4DF4A2900B1F94FC08B0F8005F7C2974616CA9EE17868FC622D341083F97746041D2A696F5471DCDA2C25E2D11685EA9C65FE58BA5109DF6506B73BB132278654EFAD5BFE7A8672CCBAE2A4A675F6DBD29DD5B5F8C94C9F83BE64449C127D2CDD528783077C606978EADB4CD4E75DD99003AAE183B16BC6D00D666136629D2BD65C3FD68A5F1618964C2EDA80B9475988BFE782E43DE87E3359175140078EDC63459F0C39CA90394DC1C0BADB8508AF01089575130784AAF364588E90BB8B9A88465F899F5B8BFCEE5DF7825BAD5B36CE85D94441F77B6B24F5A87D4BC95C260ED10C70A5460A6AC927AF61D7A59F71572EFBD1DB5FC45B20A232D381DFC7B4E7C6EA157B076178A3047D77A28B8D83E25D725D716FC4BE3FDFB405C412E61B3FFB0480F4F53E9EC01B3EC92DE8008724380DF363899A7CACEC5A49B6B621EEE03B4EC2B625F8651B95BC902AD7E2A4443A7B62BC2A8C894BA692F31D77AABE164A28A1B111A167A2B9E52ABD385B8C9F0E878A3119B182883D064525B96D969FFB62B146DBE8E4F2FFBF5FB01A584D4FB052B399B7D982063DBDF22BDFC610E593D5D5C6015E1C16788A9983A3B2D8B153EE80B04AC2FE3D117770965D0909BA4D322F53C26C8815250B522621647D2C3DAE5BD0F70D5616B0B2F9D4851190537D39EBA51B7567C22E747B2CE30152A5810FE20FE96A6B5D79D248D8F95D22575348293171AE442B1A8B4B79D5D87073EA49DD21A45542A7C998C1098E0B34DD1BCE765D80200DBE30B8ABD222A8B97AC3833B3900A59F1B33FC8B1B1D1F054F33D00A0FBC4AE86235D65DFFC7E1B9476C5C6CB0F3F7E5FBD3C78CA6D350C8D3F84F151CC94A21201927DA11C38ECE7A83A0120842FB23B9E2488AABA36C270E79A6EFC17D0E9D2714ACFFFC03DD0250D38234CC37C1AB3BE2815D45D78D22EB2821514D06B25DD4F080CE918FC68B3727979A64458808AFAAC98639F374975006ACBC6AD5E6CD8F05640961D2360D88260CEA62D258F553CE6E0EDDA98B5818656D3A05A5D15AAC2DEC529FAF9FB211305C491857C5FB4D35EBE7EA922660CB047CC132D82D8D6C7795AAD8D1DC81692BE4487CAE5FA761FE610D4668C5DA3C61E2BA80E667723D76C22791BAB82D53570BD1282BD79FD0B2C53EED99220B68EB7765F19B5361057C4ADC5550BE74D9187FF74EC98BE857F2DE4D1DED71F6265A5D8B50F04F1D163D265C53B225A8CF2909ECE072E94A6F71C13888A53C565F5BFD0704C9D4A55A85C5C3B1C234C371A6A9D22B1B87FCB96D795BA0069E4C05E53DF4E8ADC1472932D04EE9E3C74637FF46EC7D6724835A840B6B88C3FC2D7F38D431F4E501AA949352606FCA88C4B8302D16F1DDB5975BE95461982E7F8BC17F95650946DF89F25E8C4A4BA29819C21AE826C5E3D7CAF88441216665A9AD00B470733DBD6A782EB91E4FDA318DC2B371F170FF985373457FF23A8C0C187ED74DF727D92CCB3828D045F48D8204D9FA331A7B1AB108BCAE3A12C6BFBDBF10449700A905B4B891357A3FD1D710365C44A002EE3DDA7E6DDA601F9F0E05B65937E40796CFBFB55B2F8683E2343CBB0787206A3D2DEF98E2F2C0093D621AE941F69593E0EE271CAB5C2B7534190C6570E2FC2705F4588B5307D43FDB811E380B31FEF6B44E23FAAD7AFD2B6227C9D468D592B6209BB4D0A7258305D6BDD8CF78B8E9569692AB6C505E39E2807AEB06EC472B0A41CCC53198EC849385AB5E9927BDAC3B3A236B93F43F3CDCE5BED56EF1D3F9A71A90E9D3624C6EB073641BA6B8FE8E001037698A83A85570C3A9F29DD677DCA59EAB54CE0C5156EDA418B760BFA59762ADFC03BE0CE59A8A50CF5C6C9EAF210AC9474ADC1120F7F092575CFB7948E5C2E8A2957DC9293ED151D3A8C3CFC2DEC18FC62E5A530E4251462DC5A94861B3290E30CF195FA6E13FC62C48F823344A768FAE3BFF5797CDC3098900A690D46D22A3F53D7B434990BC86E2C76221CEB90400BC2BA4438BF02AA74BAC2D3E1626B98CDEEF9D66F3A6068B9D16DEC04CFD2638AF7D93BE4A759687F30336B27FDEA95BEC5A80902E4A14D64B7685DFDF4FDABEA65C4B3ABA787E1EFD3ACC03FF79E60723D3D54071F1712F83AF86FAB5FA52F668C5878F0329AFDF8D7773CA1834521EB02FDC64908AD4C159A77F5487BDF1D609A9A3E7DE913DE0A06AFB336FE4614D23D79152E0B39A77FE8653AD3ABF3BD2A6D97DDB63658327A2BF098600E102D80166EBF795D48A6605889DEE5F7DFDC9C271AC09526A802F471A38B568C61A6B6A9B377E47B8C642B38462EEEC802BF05D79562201F7A3AD165F599CAFE4104ACCFD42F24A9D62D92F0D7383F08DF8DA4D6950063A5ADBFC46B67D583BF0FA7C7E7E744DE211EDCAB10DAC05D86088B3ABECF3567F89341EF7C26A717F34B8AB3BE515AB7FECC40CBF08B6C84836F1E53678099BF5FBDAA1EBC850C9EECEF1F3E6309522B586262611C06F945844E0F4DB5782C9772DB86BEC6A72D7AB187C827A91E47579B307A2DEE8C8A2DE9835A9ED8CD8A871B6160D99CE6330762C2D2CC606821E8E34ECCC075A6E9D331794F6BB75F3D1837D24FC997AB17D0EF3B12E545F5F43167473A8809CCADD5B3CD62063C30CBD6B1DB4C011F02EECA8D8802F4ADD227310FD9576B8522A526611B72C037927AC9E39A17B6ADED4AE81C3C7C9245CB83D742DCCAC6D5772A68F3DED45DEF8080AE76934B8CAE1A81CFB1B4FED6AD7A8911181FE4B2FE1A0EFA3BABA57806C51445F2B7600328A6C8207A7463D3AF0CEED83A6ECC7FE505631D0CDED109B6977F4B71A6E8D8555754EA069A22099A727AA84BF4E1F0620E0F8F07DC3D8E413C259B2E7251CFC2F39D645AA431F0F18E0E352638ECABB2EA430983B4A5ACDC645AE9A7ED83A139EAB36C26BF2416F496E115B3499FEF7C88634D0767735C31E90DF95139C9CB454B7FC94C740B1C74884FE949524B32C02CCFB37D5A2F1E56AFAD95EE9D7E117D4314A4C66804A5E33F8D7A80586A69B580807A09CA7A54B2D8033F53F468DE4A3A71B2861298521613E94351A3AF17AFA5A7DA7CC28BEB58CE9BC43F76C41CC7A8C0C0EFB2A2AF51D77289A9FC538A34BB159C4919EE80D7160858CFFC0D543E5C299528DF2228B91EBE6849AA4673757EB2B2F320D6079A48A7CAD7F618D895C7CD029B40B1D486FC8CE2CCBFD41FFABCDD9643933C3FFA7A1B8187BE9B73320883410F0C3C97AB5D4BF28809FE6B424C25006EEAA6EE4174A450AD24BA0F1D84E5D92C428C9525FA73AFFADDCD28AC102489C1AC4713C9ACD2E37AED7CEC42687398A3BC5255E5F571D91C4906389420C8177B6721F5C1C0A11A68AC810F1483C2B2613B4873B464CB4AE448CDF69AF7168879551BD85908E8D92D28AF6B8564FE3AC59000D2AD8DD3B63F4256EA1C17435A348A03CC286B103897792CE125C80351459E847943D049CE6AB3DAB8257D73C01B402506A77575F4EF18874944042FC2985E2BCD59D396935ADFE4197401D512E786490C37A98B7D1DD02E1A345987204A934DADBBCF8B67EC3B69473CB9A8DAA9F251E332D51D61C0B77C0E95BC169E7B03E2EFD47B0CC5FAD25933988BEC30CE7472B006193A79AA1A2F5C3BD9D3A86FB7B436B7A3288C6C2173BA18B1A84309ABF0D5722230D8F1DA30140BF2159E3A284985D0602F6499747470DD4D31D58C4B4DE8465A689E9878BBA3E91AA8BD5B07060916504E341BDBB7F12BF47A072380766B706E24AD0D3910602C2D87D90DAEFDB3DFE3E08419CFB814671A5A0C2175BFB94126AC1494D1990AB9E906C094A9EDD95F6B29C0EF5D3B4D1E3F27739B476E8AA20E1A24FD13283DECD08228557FA1DCDDBAA1E17C7C8E2D706E8302E5DBF7FDF3B908AD34038BAC721D71CB210B8326BB8466E495B136338091AFFDE563E301AC22FC76C842B4D123385510FE6FEA3754BC2A297461350C477483D417CFDE1498DADB32399C96A86D8686D8931436ED4AB9E90D2966E7CDE8EF0C2EDA5B020C4B9EF10BBCEDED0092EAC95069A31228AF06BA0841C4EC17E67DC7432D68A41770922248BB20A9333C3AB62939AFD1E7BEFA32AA63AFF859C3649EF8B23E8CF3FF927AC34FA602DF963AC1137FD40BE7790547159466A892C03B1FCE2FD20A3A53F2772FE4E664600B00866A53C8978EAEE2869B01936C7069B2BDE3CFAC0313B88813BACBE1E6A09CCF9C0E39EEF306E71CD45B487095C430E722B64CF537A0240CE3077274F9A47FD5EF1119A65EF34B7F4499551D7B78F6A47798EE34546B2FA48554AD2E5E9E17705CCFB10D4F06126B2B22ED5175A3A97349092725DCB828C88606458BD47CE14CA47AFD169C99C6643BF6E0591A42CADC0E5F2C5F27D58A5F75E497E0AD7BE8B1C435706D7825A839D3916E08AB7DC703EAC28DA068D284E2CAE20264033A0A2FC60EE4768BAC341E33B371EAD9796FD1A3FC478A68B1773F1224DB953F5B715C6002BE2571641AA0480F1942705ACB62034998F48E93C59F4D70EC1AE2D317781DA4FDCD5EA21B0AC2269FA18B15FCD61162350D4864356FABA55870956E6A0EEE6BA17C23E8705E9700EE55E6067B5E290DA08530365338AE81F6669E5B0C4177C169EAA955E4C22A2F6044E0667ED3F807B98C35C7B23D34A5C29519EC390CF8EC49C173BF68249261980F676785FF297F6A9CE8A966413C7DDEAD63871A491223B69C2539DB1B4DCEE65B0A361D1F15410101C8CEF18F9FE617472CA1C53E73F3A838CE60BA15BDEA084B34E6F324B5DB846C12AEE554437FEF299F48071CAFD81C103518B36D33207B01376E47840603D51B2AE02F00F1CAAA8BE3EB102D7D99A17C2B9074844D734C258D4C1892F389D86B93A211C649CBD12CAA4639EF5161C2B4FF2D4F8C9BDC5B71ECEF506188CA631EF1EB33E88F267F6C75DE255C46866669ACBB3E71BD56F7D826C3F4211BD8EE7414504C874714FFF410791A485C20F59754F08909921EAA83662E45E81EB14600971B9F68349DF57B61132D1ED76C6B028C52AE44410E5C8BA36479A660E82B86858C68D232DEF580448ECCA6DBF1739E9AD0C3FAE9E5D15AC5E1DFA4095951DFA07DCAB961CDE2D99618DD78FAAE45D821EE70373A8BE430910F9DB7FCA2FA1F4FE2168FB8010ADB0267C12556663DE84723561AD065DAC92F58E098ED68E5338E43EEC6CF12F0EF5807844AE401D9373653AEE2F98D205A24900E9016CFA4C5492CE0BC9868BA4C6159705C749A73089098B7BCDDC1F5E68593BF7712AC4B7C6CF05EA9A239F05B66E5A4D261ED270E763E91644B41802D0F3325E7B2781A7D7A47F6DE367EDCE2E49A26C00A0D996C62BB63C4253B3D466E4A466472FC1057EF64C3CA21500DD4BA6FB4D4CC2AB26312BD8B6E8FA45BE216A6D3307C14F1D2D4BD068B9915D31D417C4F0937497972A9290AE6A91E5D32DE122673F9189A5CDF13899470A9BF319BDC181C8B8CD965F424A5DF200FF45576D4192E0F8BD45599B3B96B4ED34807593B125DA949CCBFA3C7557B97CB41BE38B4FB916EE2B0F751D77AADB492F3ED9B0B14AE14AD9254D90DD52AF720B23A44AFE87BECDE238F114BF2AE712A148C574E24EF0F1FB5ADEA8928293E1F7117D1D3555DB290606B575EE41161097BE9A9C34AA0D3C230515E00BD783B2AD285BC8BD0F32DBD39522096BA7FD87500B2C834BA70A67B26CB416E9D0EC0992AB9DE0A7A617FDD49147526CEB5A178D4E59D4FBECE46CE39D496D3E93A272015CCC581ABBCBFB2546549B0ED1A4366725D70E36FE1960539CA7988275285950DEBBB291181A176250851865D571B52CDDC95EC20DEDE8E520C1B29FC074B9482F84D7C52C796F4D88DA5CE56169383E8299B166692975EA49ED8E41202CA54ED3705FF59FE642DB29DF04513E11F868D5AE05A02317F9CABF925247C472D420EAB7BBE88F193C931895E6C2ADE5418D05D8030B31DA2E17EA0A19B5954A7A08CA52BE0F06C514C04F462560FBD1078C19184B5300AF7B00DA624BD0C0369D625C0429A45C82962FC4ACE6AF670AA69E8AF1C8EDFE68B73751A73FB89CA7C5A64A3BFB3849E113A39999B03D3F3ECB6C5182BC0B4A8ADD2EFB9430AA744EFD7B50B71853296742CF39C8FC6C04BDCBE5B9BF9047D62C0FD830FAFDF52A376D07BDDC9897D2D2216AF4A272522F8DB514F94E093DFA022A62C137E45C31D7440DF4808FDFE9C401E39CCA1CCFB162C243DE5C24D5402D9269B4578E8E1C2CD7CAE9E731640FF50CC7EC6406F955F4B32413CB2ECE35EF374D188F5F4F598C087A46CB05EE96DCC3E8709E047261AB89139EC683E1C09EF119F894A01CD666258B042353613385E4C775D7AF4EDA029873C7C7612345C66D71888AF6AF77986BEE490047486AA6BCB610B14EA223BAE816D47FF7700CBCA49EABA8FD090F3053FB5A32B392015C32D6E84242F8A9B9E9BA842EA1113797A24F5764000A5766E25E30B08FC9DE90262E29AB06AECA407EF91AAFA9E65203A9230D1FBBB34968EE69B3E902598640DC8B2ADCC41A80C855DB5EF53445ED706D80E1E0D6573C3321439E869D50E64B457EFB3793A4BEDF61EB785D2B6F4F15A65F4B996E1880EB774E115158F9FF54D92B0A1386E7660095A60589CF47D6272BE3186327FDE9002B63D5B466486695EB68B47DB727AA98711973CD9306094B16DF603525CBF4706D1D79B660FF197394588560039F29F9F6861749BC2E04EAD90A497BAD7546F8A3D5A87A553BD1AE7B26A4EED01A226C40F3F6808FE4785B575ECE95CFA94282DB25163F74FF2C43D97E72A538B47A1E25B1E443F0D74351D52D4CD47FF3D984E54489D6BDDB336AD1DEDED8827C3AF1BF079933534F3731200F223370660570931482BA57F7C7895B50135D78606A80C0F3E8190B8ACA701DC1B398AF2334B98DDEC9CF52B33A1FC2317418B58EA9ABA66E94DA7DD42E9E6EDE6DA2EB04D79E167105B966591F193544A317B9799193C3542FD752A17700D8D665806F10013B78EEAD7BE128625EA93D62EFB12E0991555852372CC88B67E76D25283B56E06DF196575A5A5F721AA38FDB1B5838622E8814D70EDDAC0DAA07D9DC5C43AB6C92937244041F6C0C409CF9C453F3848C5BBE309356458C580C53DD44F9968D7AA652E8D3BE556B49A76AABAAABA5C83F74ABF65E2CDFAAE4E0945B5E8CDE0955E5608ED7751545FAF42168C7CED576FE716705B59E9AFC8442D3C90337581BEEB670500D7C72B11DD54BD471D634A34A6AA8D7AA749AA21F2F8119121D526D37A2FA2CC1D04D5BAFBED537D7FBD2D36922ACE43002E94FC632768082FED7BD44005A1A5CDB490B0A298FF67B2780D047258A661837A4A20A5847A5FC7E65B51DCCF8DAB5CE02C7338751FFD1CDD4A385962D6000BB1DC0226375E5A14BE24E5BF32589685BC40B524A7FC436A80AC117947925BCDAA2B8951E06D15C327747250DD6A22AF21EDCE124B9F39670C185D020470E16DA8AC85F88D00A114862B32670ADC76F401A4517F75535195E528707075315426FFF92ACADABC75CDCFFE0AF18504A704B2A97596E1A0AB1968AC554B85068E4D4673715201A4C42A3040AEFDC34450E18227F258C64A7409136937096E9BB96525D002254C2DB54F5F80ACD590901097CD1A3524F0E826102E6AD156C92BE33B808355122F1E17ED0CD9EC893E084F16C8DDC7481F85486C5DA90C613AF585B56D3A6B355D18460CBF00E2DCB89E62DB222B546FD45F76298CCB32D48DB1B3FB1FE9CC208770EDB6FE4CACBF6806B4AC7A45BC29014AA2E65600EF88B742C670432CA11F721DA0400DDF7023DA91D8044127BAD3999CE1D0A39EF2ADE1FCD7224095F2FCC3DD5AA152A3E2AC4E139005E51119190569BBDC95D753E6554B750B7A58DCFD5FB5D08626189CACEF0845080A89FA5BB0680904869FD7208A4AABD6B3EC1681E233651E46AAE0BE1C5141FCA2DA1715628D2B7EA21B5EEEA3502A8B667B3A83B24CF98D66CE0AB5EAEF1672250AD3E3B7427070546EAF63C0E61E1DA671CFBDE50419560AEDD5A0048BA8EFE545DDD21A7E18A6254E9638EAC1D29AF08322421625CDC4225B67C80E682D9364F7873F635356FB080142ACC4DDB6367AF57154D26BEE5607A351E5A6F16B87DC56F32E432B6ADC107F0BC7D2EFDBB068F544B5EAC793CCB39BC8051EC284C459E6BF0F617488A0B3E32E5D959F8C236C55570B20A4857247DE12F82EF4F9560F58D369A82261C1709530E4BE7DBCDF3BA85287F0E17786E3E12B9648F2AF2EBAAAE1ADB495FA82919AF457880D45EC4DA770EE13AE6932DF0296ECC0C68C015712BDF9BEBA16C20AF5D286B422CC0C39CDC5632594E3ABBAAE8CAF36E9932CEC333CE9A7120325C20EA2A2A13542914141D503A8F342939E95A8613065F21428C9DDA30A1729200A5383ECD940A733FBC80728CCE3EAC1118A9C6ABFB7DF7FFF3DE333989E5AE2A6817EB0471672E97CA9DC71894823E0306D27CC3FEEB4E95EFE3A88D164600BDF1507162AB20724810F977345A62F65E59F2E1F95C9EEF2D1386766ACB480389832C93448DBC08AD06AEE93948714CA586B653854DF10537FC640AA021C5EE47230A7A797E088A7277EFFC72534C746C0D5FBF8064130EA23E65D5AA8DB5B808484FDC58BEAC089904614A34E4E7AD40A9F809B8340D8232FE24E974FFEA906556826C00F7E0FCB48B6C47E55EC1FA959AECC4E07DCE003C4DB63AAA8A6237BF6F2CF3990A0D76AAE69BC763C80A8C08EC38E63C09806CCBA51498329B987349B2BEA3015F856EBE44EA92F11A54F8D25F21441F83D94599BCC5111C96993239CF7A4C36F7954E90B0AD5FF217BBC86B3EAE5842B6688AC96A104B8B9A00B498991ABBC05E72AE567FAD4ECC993DBC4063AC232255524E96386193122C805FBDDFDC73161F105D3E1C9651004F0C0B729F99363C561B8DF84286C79E3B1527939B0E2A85C8EC9E8209023CAD8D104CCEDF9980479583B845B34B8C2B912C771B72FA6CF3600D5AFAD6A8EDFFFFCFEEEC3479685A9D7BB93F16A4DBE7B77CF0DDEF5A137F5BAAA52BB1D41848036C9FF0E852CBE2069C10FB9C73578349C05073AB93F26FCA7D08F08E545772AE9FC3A4227960D5369E7F9C742D1B593A2C4751915D46A757DA3B8677CB4E9645DCD56B7EAEB4E80764C8B2378745F645AAFE5486A344E24006579A5D6D044C5C54D6465C3A9CB5164096461A9C87A9FDEA1ED4EEB0B1CEA89AB05EFFF82E9CDA9C31E9703A3FC6C86B286FAD131C3DD0F5D64EB9B9EC6C8F0C59A94B9951C3AA951724BEF816EE68A87346E60D38246275A086314A6AE01C494B2E61EC22CDAB3135CBCAB543752A5F8A5D1D94643E7092A802C907F85FC22539BA0B20AD22D032A009DFAC44A38877ADA0CD965035E17FDF2627618F340F304FDE5F7852C4EE5CCF70CC51D388B232A5B22A71EB699866BD67E63431D392DAD4489405B0FDC8CD433BA3544B9BE4B12C7B77F6C0551957AC041BDC9698F9E833248641551677662713C458C2FDF1652E7845CF720BF98F5D3FCB92E3D6F5DDBB0528669333A5F6625D7E2AD3A605B14459A71C521DFBA6425D7B024A73E2F027D46D9764B5EDDFD305ED4C749B5333E4D60D33E894F4AF5A024921ADC8B041CCED976C7BEEE73593B5E9A427FA53BF7BB3F87EBD2E7F77CB6F20AB1535215F2227CBCE71404D8B1B6E97FA69BE475CCD8263262D0F679576A96742E4A55CB4A80742A7D1A1918FD837EB3FBA7442736C37452D7F3CCCD766359EBCDC120D61B10683AD17C1C53BB0AB1964E6561892E73CED50EE796C7DAD642B0742FB0219A5B4F65FFFC3F19D183CE');
INSERT INTO "frozen" VALUES('d4aad842667a0756890fe0340f1b771c4fbdb13b073c2c10272ff520f495564f','revision',X'7B22666F726D6174223A312C226368616E67655F736574223A32342C22646179223A22323032362D30312D3032222C2273636F7065223A7B7D2C22656E67696E65223A2264623964626331306636663831346366373265303131646131346235313865653831386665366235393265346165653533363335316239323838353230636133222C2270726F6A656374223A2239613537656533373164386234663933366233363938316561616166623735303263616139613830376462333365386638386332633030356464663336666664222C22636174616C6F677565223A2230613166643338353731396634343364353865633862643137613062336263343666336465633664663535363965313334353139323038663136383234636331222C2272756C6573223A2263306161393165326331366436633239393962633765356662666263653961636363333336633164373634343435656163343631356636376434626233383931222C22706F776572223A2262303430636464393730646436366438323035646239353435323230623266623862653734343264343964346235366163643565636433623264333463383462222C22636F756E74223A322C2262697473223A302C226F70656E696E6773223A7B2230223A2234656262396435306237623466363431653136383230376538613739636233633233656365393739643831636639623539396438633039333462353966303831227D2C2266696C6573223A2263353666623130343562633830343639666338373034336430323834316430326164623831396334626133313631656132346434653338646336653263336134222C226F6666696365223A2239333136626565343464386237646664653561333938623163653635353436356135626266623436616339346631626330313438646564373638313633396665227D');
CREATE TABLE hardware_set (
	id TEXT NOT NULL, 
	version INTEGER DEFAULT 1 NOT NULL, 
	name TEXT NOT NULL, 
	notes TEXT, 
	CONSTRAINT pk_hardware_set PRIMARY KEY (id), 
	CONSTRAINT uq_hardware_set_name UNIQUE (name)
);
INSERT INTO "hardware_set" VALUES('f3037166891c44ea84eb04a57e9d55dc',1,'HS-1',NULL);
CREATE TABLE import_mapping (
	id TEXT NOT NULL, 
	version INTEGER DEFAULT 1 NOT NULL, 
	fingerprint TEXT NOT NULL, 
	name TEXT, 
	mapping TEXT DEFAULT '{}' NOT NULL, 
	CONSTRAINT pk_import_mapping PRIMARY KEY (id), 
	CONSTRAINT uq_import_mapping_fingerprint UNIQUE (fingerprint)
);
INSERT INTO "import_mapping" VALUES('424e502987a54ea3ac5dcdd0bbcfd5ee',1,'f','Doors','{"Mark":"opening.mark"}');
CREATE TABLE issued_packet (
	id TEXT NOT NULL, 
	version INTEGER DEFAULT 1 NOT NULL, 
	opening_id TEXT NOT NULL, 
	at TEXT NOT NULL, 
	"by" TEXT NOT NULL, 
	shown_key TEXT NOT NULL, 
	CONSTRAINT pk_issued_packet PRIMARY KEY (id), 
	CONSTRAINT uq_issued_packet_opening_id UNIQUE (opening_id), 
	CONSTRAINT fk_issued_packet_opening_id FOREIGN KEY(opening_id) REFERENCES opening (id)
);
INSERT INTO "issued_packet" VALUES('5389cb6df13f4d049e2885880c70e909',1,'1616b6333a7f40fc901d066235230f53','2026-01-02','keeper','case');
CREATE TABLE kit_content (
	id TEXT NOT NULL, 
	version INTEGER DEFAULT 1 NOT NULL, 
	part_id TEXT NOT NULL, 
	number TEXT NOT NULL, 
	quantity FLOAT NOT NULL, 
	CONSTRAINT pk_kit_content PRIMARY KEY (id), 
	CONSTRAINT uq_kit_content_part_id_number UNIQUE (part_id, number), 
	CONSTRAINT fk_kit_content_part_id FOREIGN KEY(part_id) REFERENCES part (id)
);
INSERT INTO "kit_content" VALUES('4441b1d275f4495b9c63deef2a6ea4f1',1,'5a45736ebf28493e90e03ab7018be3aa','S-1',2.0);
CREATE TABLE leaf (
	id TEXT NOT NULL, 
	version INTEGER DEFAULT 1 NOT NULL, 
	opening_id TEXT NOT NULL, 
	ordinal INTEGER DEFAULT 0 NOT NULL, 
	position TEXT, 
	width_mm FLOAT, 
	height_mm FLOAT, 
	thickness_mm FLOAT, 
	material TEXT, 
	construction TEXT, 
	stile_mm FLOAT, 
	undercut_mm FLOAT, 
	self_closes BOOLEAN, 
	unused_holes TEXT, 
	core TEXT, 
	raceway BOOLEAN, 
	CONSTRAINT pk_leaf PRIMARY KEY (id), 
	CONSTRAINT fk_leaf_opening_id FOREIGN KEY(opening_id) REFERENCES opening (id)
);
INSERT INTO "leaf" VALUES('468dd64e49c548a79249229aa9218bad',1,'1616b6333a7f40fc901d066235230f53',0,'active',NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL);
INSERT INTO "leaf" VALUES('9cf334a07d2a4820810df808effb75d2',1,'1616b6333a7f40fc901d066235230f53',1,'inactive',NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL);
INSERT INTO "leaf" VALUES('8da387fe7e3349cb9af58f9705a956d4',1,'7672ad78a69c4b52a375b12424d4885d',0,'single',NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL);
INSERT INTO "leaf" VALUES('18339d0e40e84e7cbb2853ee62ba38fc',1,'2e7eeac9cc7c45019746d95bd41d584e',0,'single',NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL);
CREATE TABLE level (
	id TEXT NOT NULL, 
	version INTEGER DEFAULT 1 NOT NULL, 
	building_id TEXT, 
	name TEXT, 
	sort INTEGER DEFAULT 0 NOT NULL, 
	height_m FLOAT, 
	code TEXT, 
	code_edition INTEGER, 
	occupancy_group TEXT, 
	occupant_load INTEGER, 
	storeys_served INTEGER, 
	sprinkler BOOLEAN, 
	fire_alarm BOOLEAN, 
	access_policy TEXT, 
	CONSTRAINT pk_level PRIMARY KEY (id), 
	CONSTRAINT uq_level_building_id_name UNIQUE (building_id, name), 
	CONSTRAINT fk_level_building_id FOREIGN KEY(building_id) REFERENCES building (id)
);
INSERT INTO "level" VALUES('17f35040e9aa41c4b2378c9e84d340f7',2,'e9147bacfdb844b5838abccc96ee400d','1',0,NULL,NULL,NULL,NULL,40,NULL,NULL,NULL,NULL);
INSERT INTO "level" VALUES('29cce2bbba6d422e80ec43f92826c382',1,NULL,'roof',1,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL);
CREATE TABLE lock_point (
	id TEXT NOT NULL, 
	version INTEGER DEFAULT 1 NOT NULL, 
	opening_id TEXT NOT NULL, 
	item_id TEXT, 
	CONSTRAINT pk_lock_point PRIMARY KEY (id), 
	CONSTRAINT fk_lock_point_opening_id FOREIGN KEY(opening_id) REFERENCES opening (id), 
	CONSTRAINT fk_lock_point_item_id FOREIGN KEY(item_id) REFERENCES existing_item (id) DEFERRABLE INITIALLY DEFERRED
);
INSERT INTO "lock_point" VALUES('1616b6333a7f40fc901d066235230f53',2,'1616b6333a7f40fc901d066235230f53','cd75a50db72a40208de44b127e57b51b');
INSERT INTO "lock_point" VALUES('7672ad78a69c4b52a375b12424d4885d',1,'7672ad78a69c4b52a375b12424d4885d',NULL);
INSERT INTO "lock_point" VALUES('2e7eeac9cc7c45019746d95bd41d584e',1,'2e7eeac9cc7c45019746d95bd41d584e',NULL);
CREATE TABLE office (
	id TEXT NOT NULL, 
	version INTEGER DEFAULT 1 NOT NULL, 
	name TEXT NOT NULL, 
	text TEXT NOT NULL, 
	files TEXT DEFAULT '{}' NOT NULL, 
	CONSTRAINT pk_office PRIMARY KEY (id), 
	CONSTRAINT uq_office_name UNIQUE (name)
);
INSERT INTO "office" VALUES('085a7ff36eae425cb73e3655b330f864',1,'office','format = 1
paper = "a4"
','{}');
CREATE TABLE open_question (
	id TEXT NOT NULL, 
	version INTEGER DEFAULT 1 NOT NULL, 
	delivery_id TEXT NOT NULL, 
	opening_id TEXT, 
	kind TEXT NOT NULL, 
	mark TEXT NOT NULL, 
	fact TEXT, 
	answer TEXT, 
	content TEXT DEFAULT '{}' NOT NULL, 
	CONSTRAINT pk_open_question PRIMARY KEY (id), 
	CONSTRAINT fk_open_question_delivery_id FOREIGN KEY(delivery_id) REFERENCES delivery (id), 
	CONSTRAINT fk_open_question_opening_id FOREIGN KEY(opening_id) REFERENCES opening (id)
);
INSERT INTO "open_question" VALUES('e7842791e9964f88802e16e625b1c0a6',1,'ad3ecb753f394a078d32644bcc53c008','1616b6333a7f40fc901d066235230f53','blank','0012','hand',NULL,'{"before":"LH"}');
CREATE TABLE opening (
	id TEXT NOT NULL, 
	version INTEGER DEFAULT 1 NOT NULL, 
	level_id TEXT, 
	set_id TEXT, 
	mark TEXT NOT NULL, 
	room_from TEXT, 
	room_to TEXT, 
	form TEXT, 
	hand TEXT, 
	rating TEXT, 
	frame_rating TEXT, 
	stair BOOLEAN, 
	egress TEXT, 
	egress_toward TEXT, 
	no_exit_confirmed BOOLEAN, 
	stair_release TEXT, 
	accessible BOOLEAN, 
	exposure TEXT, 
	temperature_low_c FLOAT, 
	operations_per_day FLOAT, 
	operations_day_off FLOAT, 
	power_wish TEXT, 
	supply_distance_m FLOAT, 
	plan_x_m FLOAT, 
	plan_y_m FLOAT, 
	rise_m FLOAT, 
	frame_material TEXT, 
	frame_stop_mm FLOAT, 
	wall_build TEXT, 
	reader_aside_mm FLOAT, 
	frame_face_mm FLOAT, 
	header_depth_mm FLOAT, 
	closes_first TEXT, 
	smoke_seal TEXT, 
	controller_output TEXT, 
	connected_by TEXT, 
	fire_recall BOOLEAN, 
	code TEXT, 
	code_edition INTEGER, 
	occupancy_group TEXT, 
	occupant_load INTEGER, 
	storeys_served INTEGER, 
	sprinkler BOOLEAN, 
	fire_alarm BOOLEAN, 
	access_policy TEXT, 
	wave TEXT, 
	priority INTEGER, 
	difficulty FLOAT, 
	installed_on TEXT, 
	notes TEXT, 
	extra TEXT DEFAULT '{}' NOT NULL, 
	retired TEXT, 
	CONSTRAINT pk_opening PRIMARY KEY (id), 
	CONSTRAINT uq_opening_mark UNIQUE (mark), 
	CONSTRAINT fk_opening_level_id FOREIGN KEY(level_id) REFERENCES level (id), 
	CONSTRAINT fk_opening_set_id FOREIGN KEY(set_id) REFERENCES hardware_set (id)
);
INSERT INTO "opening" VALUES('1616b6333a7f40fc901d066235230f53',6,'17f35040e9aa41c4b2378c9e84d340f7','f3037166891c44ea84eb04a57e9d55dc','0012',NULL,NULL,NULL,'LHR',NULL,NULL,1,NULL,'key',NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,2021,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,'{}',NULL);
INSERT INTO "opening" VALUES('7672ad78a69c4b52a375b12424d4885d',5,'29cce2bbba6d422e80ec43f92826c382',NULL,'9E4',NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,'{}',NULL);
INSERT INTO "opening" VALUES('2e7eeac9cc7c45019746d95bd41d584e',2,'29cce2bbba6d422e80ec43f92826c382',NULL,'W7',NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,'{}','walled up');
CREATE TABLE opening_fit (
	id TEXT NOT NULL, 
	version INTEGER DEFAULT 1 NOT NULL, 
	opening_id TEXT NOT NULL, 
	input_key TEXT NOT NULL, 
	fit_key TEXT NOT NULL, 
	engine TEXT, 
	facts_read TEXT, 
	battery TEXT, 
	CONSTRAINT pk_opening_fit PRIMARY KEY (id), 
	CONSTRAINT fk_opening_fit_id FOREIGN KEY(id) REFERENCES lock_point (id), 
	CONSTRAINT fk_opening_fit_opening_id FOREIGN KEY(opening_id) REFERENCES opening (id), 
	CONSTRAINT fk_opening_fit_fit_key FOREIGN KEY(fit_key) REFERENCES fit_content ("key"), 
	CONSTRAINT fk_opening_fit_engine FOREIGN KEY(engine) REFERENCES engine ("key"), 
	CONSTRAINT fk_opening_fit_facts_read FOREIGN KEY(facts_read) REFERENCES facts_read ("key")
);
INSERT INTO "opening_fit" VALUES('1616b6333a7f40fc901d066235230f53',1,'1616b6333a7f40fc901d066235230f53','case','9f737a60efd3e7749fca3581fe60d2792f2094640b394a4735876f394448155a','program','a5ca83876477bf081178c26357410b22',NULL);
INSERT INTO "opening_fit" VALUES('7672ad78a69c4b52a375b12424d4885d',1,'7672ad78a69c4b52a375b12424d4885d','c3958cb63914e37cbb2515bb228775eff6bbdf3376a40d5a68374065f72a2b88','4d1a5b681209a263fbb5d5c98b568915f236ffecd8d4f070f0326407c934a9cc','43da2bfe67f668f9eb707f2ad1200c9f','84d8a6f668ce7b7e99626905490ca049',NULL);
CREATE TABLE own_field (
	id TEXT NOT NULL, 
	version INTEGER DEFAULT 1 NOT NULL, 
	entity TEXT NOT NULL, 
	name TEXT NOT NULL, 
	label TEXT NOT NULL, 
	kind TEXT NOT NULL, 
	unit TEXT DEFAULT '' NOT NULL, 
	choices TEXT DEFAULT '[]' NOT NULL, 
	CONSTRAINT pk_own_field PRIMARY KEY (id), 
	CONSTRAINT uq_own_field_entity_name UNIQUE (entity, name)
);
INSERT INTO "own_field" VALUES('85fe4f6040b2463a96c9be3a1ff24bc6',1,'existing_item','key_group','Key group','choice','','["AA","BB"]');
CREATE TABLE part (
	id TEXT NOT NULL, 
	version INTEGER DEFAULT 1 NOT NULL, 
	number TEXT NOT NULL, 
	kind TEXT NOT NULL, 
	description TEXT, 
	supplier TEXT, 
	finish TEXT, 
	unit TEXT, 
	list_price TEXT, 
	currency TEXT, 
	superseded_by TEXT, 
	stock FLOAT, 
	preferred INTEGER, 
	attributes TEXT DEFAULT '{}' NOT NULL, 
	extra TEXT DEFAULT '{}' NOT NULL, 
	CONSTRAINT pk_part PRIMARY KEY (id), 
	CONSTRAINT uq_part_number UNIQUE (number)
);
INSERT INTO "part" VALUES('5a45736ebf28493e90e03ab7018be3aa',1,'C-1','mortise-cylinder',NULL,NULL,NULL,'EA','12.1','USD',NULL,NULL,NULL,'{}','{}');
INSERT INTO "part" VALUES('80ec009d1c9d4de1b6b8322a0a7f6089',1,'U-1','surface-unit',NULL,NULL,NULL,'EA',NULL,NULL,NULL,NULL,NULL,'{}','{}');
CREATE TABLE person (
	id TEXT NOT NULL, 
	version INTEGER DEFAULT 1 NOT NULL, 
	name TEXT NOT NULL, 
	role TEXT NOT NULL, 
	CONSTRAINT pk_person PRIMARY KEY (id), 
	CONSTRAINT uq_person_name UNIQUE (name)
);
INSERT INTO "person" VALUES('c4ed2d24319445f2961ec882ca98be2b',1,'keeper','specifier');
CREATE TABLE placed_unit (
	id TEXT NOT NULL, 
	version INTEGER DEFAULT 1 NOT NULL, 
	opening_id TEXT NOT NULL, 
	lock_point_id TEXT NOT NULL, 
	leaf TEXT NOT NULL, 
	face TEXT NOT NULL, 
	pattern TEXT NOT NULL, 
	x_mm FLOAT NOT NULL, 
	y_mm FLOAT NOT NULL, 
	CONSTRAINT pk_placed_unit PRIMARY KEY (id), 
	CONSTRAINT uq_placed_unit_lock_point_id UNIQUE (lock_point_id), 
	CONSTRAINT fk_placed_unit_opening_id FOREIGN KEY(opening_id) REFERENCES opening (id), 
	CONSTRAINT fk_placed_unit_lock_point_id FOREIGN KEY(lock_point_id) REFERENCES lock_point (id)
);
INSERT INTO "placed_unit" VALUES('440707b1c2e44f01b761ccd29b47f8db',1,'1616b6333a7f40fc901d066235230f53','1616b6333a7f40fc901d066235230f53','active','inside','above',20.0,1100.0);
CREATE TABLE project (
	id TEXT NOT NULL, 
	version INTEGER DEFAULT 1 NOT NULL, 
	name TEXT NOT NULL, 
	created_at TEXT NOT NULL, 
	length_style TEXT NOT NULL, 
	bare_unit TEXT, 
	settings TEXT DEFAULT '{}' NOT NULL, 
	CONSTRAINT pk_project PRIMARY KEY (id)
);
INSERT INTO "project" VALUES('45368ec8fc25424c91f9bd12f927cfb2',1,'Saved yard','2026-11-30T20:47:58+00:00','mm','mm','{"time_zone":"Etc/UTC"}');
CREATE TABLE revision (
	id TEXT NOT NULL, 
	version INTEGER DEFAULT 1 NOT NULL, 
	letter TEXT NOT NULL, 
	at TEXT NOT NULL, 
	person TEXT NOT NULL, 
	purpose TEXT, 
	scope TEXT DEFAULT '{}' NOT NULL, 
	root TEXT NOT NULL, 
	CONSTRAINT pk_revision PRIMARY KEY (id), 
	CONSTRAINT uq_revision_letter UNIQUE (letter), 
	CONSTRAINT fk_revision_root FOREIGN KEY(root) REFERENCES frozen (hash)
);
INSERT INTO "revision" VALUES('c709228691f74c0a9b70fcf21a5c8e6f',1,'A','2026-11-30T20:48:02+00:00','keeper','kept','{}','d4aad842667a0756890fe0340f1b771c4fbdb13b073c2c10272ff520f495564f');
CREATE TABLE route (
	id TEXT NOT NULL, 
	version INTEGER DEFAULT 1 NOT NULL, 
	opening_id TEXT NOT NULL, 
	supply_id TEXT NOT NULL, 
	length_m FLOAT, 
	pinned BOOLEAN DEFAULT false NOT NULL, 
	CONSTRAINT pk_route PRIMARY KEY (id), 
	CONSTRAINT uq_route_opening_id_supply_id UNIQUE (opening_id, supply_id), 
	CONSTRAINT fk_route_opening_id FOREIGN KEY(opening_id) REFERENCES opening (id), 
	CONSTRAINT fk_route_supply_id FOREIGN KEY(supply_id) REFERENCES supply (id)
);
INSERT INTO "route" VALUES('0cf65e7c03ca4e488e83f79fc1b5bb3a',1,'1616b6333a7f40fc901d066235230f53','2326656ef38f469e91ee90842969e3db',6.0,1);
CREATE TABLE run (
	id TEXT NOT NULL, 
	version INTEGER DEFAULT 1 NOT NULL, 
	circuit_id TEXT NOT NULL, 
	opening_id TEXT, 
	from_node TEXT NOT NULL, 
	to_node TEXT NOT NULL, 
	length_m FLOAT, 
	wire TEXT, 
	gauge TEXT, 
	stranding TEXT, 
	parallel INTEGER, 
	extra_ohm FLOAT, 
	CONSTRAINT pk_run PRIMARY KEY (id), 
	CONSTRAINT fk_run_circuit_id FOREIGN KEY(circuit_id) REFERENCES circuit (id), 
	CONSTRAINT fk_run_opening_id FOREIGN KEY(opening_id) REFERENCES opening (id)
);
INSERT INTO "run" VALUES('0e203b9120ef4173a4cd1619973d3107',1,'91f91a31869748ef8dbec3c9a193872c',NULL,'supply','J1',NULL,NULL,NULL,NULL,NULL,NULL);
INSERT INTO "run" VALUES('b411a2b74460425f83d64646d196ebda',1,'91f91a31869748ef8dbec3c9a193872c','1616b6333a7f40fc901d066235230f53','J1','1616b6333a7f40fc901d066235230f53',4.0,NULL,'18 AWG','solid',NULL,NULL);
CREATE TABLE set_line (
	id TEXT NOT NULL, 
	version INTEGER DEFAULT 1 NOT NULL, 
	set_id TEXT NOT NULL, 
	role TEXT NOT NULL, 
	part TEXT NOT NULL, 
	quantity FLOAT NOT NULL, 
	CONSTRAINT pk_set_line PRIMARY KEY (id), 
	CONSTRAINT uq_set_line_set_id_role_part UNIQUE (set_id, role, part), 
	CONSTRAINT fk_set_line_set_id FOREIGN KEY(set_id) REFERENCES hardware_set (id)
);
INSERT INTO "set_line" VALUES('ade06cbad5f44d7eb5919de71275e5d6',1,'f3037166891c44ea84eb04a57e9d55dc','unit','U-1',1.0);
CREATE TABLE supply (
	id TEXT NOT NULL, 
	version INTEGER DEFAULT 1 NOT NULL, 
	level_id TEXT, 
	name TEXT NOT NULL, 
	place TEXT, 
	x_m FLOAT, 
	y_m FLOAT, 
	rise_m FLOAT, 
	part TEXT, 
	use TEXT, 
	battery TEXT, 
	batteries INTEGER, 
	cabinet TEXT, 
	standby_hours FLOAT, 
	temperature_c FLOAT, 
	notes TEXT, 
	CONSTRAINT pk_supply PRIMARY KEY (id), 
	CONSTRAINT uq_supply_name UNIQUE (name), 
	CONSTRAINT fk_supply_level_id FOREIGN KEY(level_id) REFERENCES level (id)
);
INSERT INTO "supply" VALUES('2326656ef38f469e91ee90842969e3db',1,NULL,'Closet',NULL,2.5,NULL,NULL,NULL,'laid',NULL,NULL,NULL,NULL,NULL,NULL);
CREATE TABLE table_digest (
	name TEXT NOT NULL, 
	digest TEXT NOT NULL, 
	rows INTEGER NOT NULL, 
	change_set INTEGER NOT NULL, 
	CONSTRAINT pk_table_digest PRIMARY KEY (name)
);
INSERT INTO "table_digest" VALUES('project','5d631eb2f2667530',1,0);
INSERT INTO "table_digest" VALUES('part','fd18b9fe8b65edec',2,1);
INSERT INTO "table_digest" VALUES('kit_content','69a866ced825fcf3',1,1);
INSERT INTO "table_digest" VALUES('building','edddb83a19c73913',1,19);
INSERT INTO "table_digest" VALUES('level','524c6cda95c71e10',2,20);
INSERT INTO "table_digest" VALUES('opening','597286d2a33d7105',3,31);
INSERT INTO "table_digest" VALUES('leaf','745571ad70804cee',4,14);
INSERT INTO "table_digest" VALUES('lock_point','bfaa05131922e46b',3,14);
INSERT INTO "table_digest" VALUES('existing_item','11e5b2b2240ba3c3',1,8);
INSERT INTO "table_digest" VALUES('chosen_part','3050b30600c9f4e1',1,5);
INSERT INTO "table_digest" VALUES('placed_unit','dacca37015d5b721',1,6);
INSERT INTO "table_digest" VALUES('own_field','a670ef4d78e7018b',1,7);
INSERT INTO "table_digest" VALUES('import_mapping','bbe9a06a158728f8',1,9);
INSERT INTO "table_digest" VALUES('opening_fit','6056ce63a4e7ec8e',2,24);
INSERT INTO "table_digest" VALUES('supply','3a82b0d7c8d5a954',1,11);
INSERT INTO "table_digest" VALUES('circuit','d7cec5b194858390',1,11);
INSERT INTO "table_digest" VALUES('run','f0232e9dc7e058a4',2,11);
INSERT INTO "table_digest" VALUES('route','7e0f327917a1e876',1,11);
INSERT INTO "table_digest" VALUES('hardware_set','585f560aceb98c2d',1,12);
INSERT INTO "table_digest" VALUES('set_line','79a79ff664ca9aeb',1,12);
INSERT INTO "table_digest" VALUES('waiver','73d66eca0ea20835',1,12);
INSERT INTO "table_digest" VALUES('issued_packet','8cd9a335782f288c',1,12);
INSERT INTO "table_digest" VALUES('assigned_part','953fbfb29ca4e0bb',1,13);
INSERT INTO "table_digest" VALUES('delivery','1a1e5a8af9277775',1,16);
INSERT INTO "table_digest" VALUES('open_question','abfe12ff4cc71be4',1,16);
INSERT INTO "table_digest" VALUES('transmittal','a622fb182af29ced',1,17);
INSERT INTO "table_digest" VALUES('office','9cfcef6d161c18f3',1,18);
INSERT INTO "table_digest" VALUES('person','3d453be6d941719d',1,22);
INSERT INTO "table_digest" VALUES('attachment','75a43ab31555b74e',1,23);
INSERT INTO "table_digest" VALUES('revision','34b21f05d7da7f07',1,25);
CREATE TABLE transmittal (
	id TEXT NOT NULL, 
	version INTEGER DEFAULT 1 NOT NULL, 
	number INTEGER NOT NULL, 
	at TEXT NOT NULL, 
	person TEXT NOT NULL, 
	recipient TEXT NOT NULL, 
	purpose TEXT, 
	note TEXT, 
	files TEXT DEFAULT '{}' NOT NULL, 
	CONSTRAINT pk_transmittal PRIMARY KEY (id), 
	CONSTRAINT uq_transmittal_number UNIQUE (number)
);
INSERT INTO "transmittal" VALUES('8ba2566e8c0346caa6f2d53208ecf905',1,1,'2026-01-02','keeper','Architect','for approval',NULL,'{"schedule.pdf":{"hash":"c7833160c63da29c02cf51b6bb898cf53137ae144cebfe2d8ecece1de0d67699","revision":"","size":14}}');
CREATE TABLE waiver (
	id TEXT NOT NULL, 
	version INTEGER DEFAULT 1 NOT NULL, 
	opening_id TEXT, 
	rule TEXT NOT NULL, 
	about TEXT DEFAULT '' NOT NULL, 
	scope TEXT NOT NULL, 
	facts TEXT NOT NULL, 
	person TEXT NOT NULL, 
	reason TEXT NOT NULL, 
	given_on TEXT NOT NULL, 
	until TEXT, 
	CONSTRAINT pk_waiver PRIMARY KEY (id), 
	CONSTRAINT fk_waiver_opening_id FOREIGN KEY(opening_id) REFERENCES opening (id)
);
INSERT INTO "waiver" VALUES('7bb9698540644a5a802b200fdf749fda',1,'1616b6333a7f40fc901d066235230f53','hand-known','','opening','f','keeper','seen','2026-01-02',NULL);
CREATE INDEX ix_change_set_target ON change_set (target);
CREATE INDEX ix_change_set_who_number ON change_set (who, number);
CREATE INDEX ix_level_building_id ON level (building_id);
CREATE INDEX ix_change_target_target_change_set ON change_target (target, change_set);
CREATE INDEX ix_change_entry_row_id_change_set ON change_entry (row_id, change_set);
CREATE INDEX ix_change_entry_opening_id_change_set ON change_entry (opening_id, change_set);
CREATE INDEX ix_opening_level_id ON opening (level_id);
CREATE INDEX ix_opening_set_id ON opening (set_id);
CREATE INDEX ix_supply_level_id ON supply (level_id);
CREATE INDEX ix_leaf_opening_id ON leaf (opening_id);
CREATE INDEX ix_existing_item_opening_id ON existing_item (opening_id);
CREATE INDEX ix_open_question_opening_id ON open_question (opening_id);
CREATE INDEX ix_open_question_delivery_id ON open_question (delivery_id);
CREATE INDEX ix_waiver_opening_id ON waiver (opening_id);
CREATE INDEX ix_attachment_row_id ON attachment (row_id);
CREATE INDEX ix_attachment_opening_id ON attachment (opening_id);
CREATE INDEX ix_lock_point_opening_id ON lock_point (opening_id);
CREATE INDEX ix_lock_point_item_id ON lock_point (item_id);
CREATE INDEX ix_run_opening_id ON run (opening_id);
CREATE INDEX ix_run_circuit_id ON run (circuit_id);
CREATE INDEX ix_chosen_part_opening_id ON chosen_part (opening_id);
CREATE INDEX ix_placed_unit_opening_id ON placed_unit (opening_id);
CREATE INDEX ix_assigned_part_opening_id ON assigned_part (opening_id);
CREATE INDEX ix_assigned_part_lock_point_id ON assigned_part (lock_point_id);
CREATE INDEX ix_opening_fit_opening_id ON opening_fit (opening_id);
COMMIT;
