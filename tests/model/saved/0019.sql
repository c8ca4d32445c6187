BEGIN TRANSACTION;
CREATE TABLE alembic_version (version_num VARCHAR(32) NOT NULL, CONSTRAINT alembic_version_pkc PRIMARY KEY (version_num));
INSERT INTO "alembic_version" VALUES('0019');
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
INSERT INTO "assigned_part" VALUES('5a7e6f0531964803b486d4ba1a870ed0',1,'9bcee544a777402f8d9d000724d83c2e','9bcee544a777402f8d9d000724d83c2e','cylinder','C-1',1,1.0,'by-hand','SN-1',NULL,'planned');
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
INSERT INTO "attachment" VALUES('cf20b7afdadd4faca34bc41849ce879b',1,'opening','9bcee544a777402f8d9d000724d83c2e','9bcee544a777402f8d9d000724d83c2e','508b7b1f113fdf173660d2b3dace45039a6d28f00ee27382c04c93af8213e4c9','inside.txt','Inside',NULL,0);
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
INSERT INTO "building" VALUES('cc6093d20e1e48189184063b9ce05ff3',2,'Mill',NULL,NULL,'B',NULL,NULL,0,NULL,NULL);
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
INSERT INTO "change_entry" VALUES(1,0,'part','ace34c25a72d4e00b83cae4ffc05d15f',NULL,'insert',NULL,'{"currency":"USD","id":"ace34c25a72d4e00b83cae4ffc05d15f","kind":"mortise-cylinder","list_price":"12.1","number":"C-1","unit":"EA","version":1}','test');
INSERT INTO "change_entry" VALUES(1,1,'part','ef777fe434fb461294dd41ddfed43728',NULL,'insert',NULL,'{"id":"ef777fe434fb461294dd41ddfed43728","kind":"surface-unit","number":"U-1","unit":"EA","version":1}','test');
INSERT INTO "change_entry" VALUES(1,2,'kit_content','b671e0a241e540159ed3c52c97ab9da7',NULL,'insert',NULL,'{"id":"b671e0a241e540159ed3c52c97ab9da7","number":"S-1","part_id":"ace34c25a72d4e00b83cae4ffc05d15f","quantity":2.0,"version":1}','test');
INSERT INTO "change_entry" VALUES(2,0,'building','cc6093d20e1e48189184063b9ce05ff3',NULL,'insert',NULL,'{"id":"cc6093d20e1e48189184063b9ce05ff3","name":"Mill","version":1}',NULL);
INSERT INTO "change_entry" VALUES(2,1,'level','f5695f5b971747c58f95123d6441c0eb',NULL,'insert',NULL,'{"building_id":"cc6093d20e1e48189184063b9ce05ff3","id":"f5695f5b971747c58f95123d6441c0eb","name":"1","sort":0,"version":1}',NULL);
INSERT INTO "change_entry" VALUES(2,2,'opening','9bcee544a777402f8d9d000724d83c2e','9bcee544a777402f8d9d000724d83c2e','insert',NULL,'{"id":"9bcee544a777402f8d9d000724d83c2e","level_id":"f5695f5b971747c58f95123d6441c0eb","mark":"0012","stair":true,"version":1}','added by keeper');
INSERT INTO "change_entry" VALUES(2,3,'leaf','14aabccd956d4222a1ef373df1ddb610','9bcee544a777402f8d9d000724d83c2e','insert',NULL,'{"id":"14aabccd956d4222a1ef373df1ddb610","opening_id":"9bcee544a777402f8d9d000724d83c2e","ordinal":0,"position":"active","version":1}','added by keeper');
INSERT INTO "change_entry" VALUES(2,4,'leaf','b9e3aa06173c4320ab369e60fa5be8db','9bcee544a777402f8d9d000724d83c2e','insert',NULL,'{"id":"b9e3aa06173c4320ab369e60fa5be8db","opening_id":"9bcee544a777402f8d9d000724d83c2e","ordinal":1,"position":"inactive","version":1}','added by keeper');
INSERT INTO "change_entry" VALUES(2,5,'lock_point','9bcee544a777402f8d9d000724d83c2e','9bcee544a777402f8d9d000724d83c2e','insert',NULL,'{"id":"9bcee544a777402f8d9d000724d83c2e","opening_id":"9bcee544a777402f8d9d000724d83c2e","version":1}',NULL);
INSERT INTO "change_entry" VALUES(3,0,'level','951ba3f6fa3d41bca247faca453295d5',NULL,'insert',NULL,'{"id":"951ba3f6fa3d41bca247faca453295d5","name":"roof","sort":1,"version":1}',NULL);
INSERT INTO "change_entry" VALUES(3,1,'opening','098e87da02a84efaab1b2a0bd81f95d6','098e87da02a84efaab1b2a0bd81f95d6','insert',NULL,'{"id":"098e87da02a84efaab1b2a0bd81f95d6","level_id":"951ba3f6fa3d41bca247faca453295d5","mark":"9E4","version":1}','added by keeper');
INSERT INTO "change_entry" VALUES(3,2,'leaf','fa89b65e5cae477083a0993c88589bef','098e87da02a84efaab1b2a0bd81f95d6','insert',NULL,'{"id":"fa89b65e5cae477083a0993c88589bef","opening_id":"098e87da02a84efaab1b2a0bd81f95d6","ordinal":0,"position":"single","version":1}','added by keeper');
INSERT INTO "change_entry" VALUES(3,3,'lock_point','098e87da02a84efaab1b2a0bd81f95d6','098e87da02a84efaab1b2a0bd81f95d6','insert',NULL,'{"id":"098e87da02a84efaab1b2a0bd81f95d6","opening_id":"098e87da02a84efaab1b2a0bd81f95d6","version":1}',NULL);
INSERT INTO "change_entry" VALUES(4,0,'existing_item','a7df647b190241839cd3baf3e39652e4','9bcee544a777402f8d9d000724d83c2e','insert',NULL,'{"backset_mm":69.85,"id":"a7df647b190241839cd3baf3e39652e4","kind":"lock","opening_id":"9bcee544a777402f8d9d000724d83c2e","ordinal":0,"version":1}','added by keeper');
INSERT INTO "change_entry" VALUES(4,1,'lock_point','9bcee544a777402f8d9d000724d83c2e','9bcee544a777402f8d9d000724d83c2e','update','{"item_id":null}','{"item_id":"a7df647b190241839cd3baf3e39652e4"}',NULL);
INSERT INTO "change_entry" VALUES(5,0,'chosen_part','4b833a1dfe264a8493f5ddffda4d5ab4','9bcee544a777402f8d9d000724d83c2e','insert',NULL,'{"id":"4b833a1dfe264a8493f5ddffda4d5ab4","lock_point_id":"9bcee544a777402f8d9d000724d83c2e","opening_id":"9bcee544a777402f8d9d000724d83c2e","part":"C-1","quantity":1.0,"role":"cylinder","version":1}',NULL);
INSERT INTO "change_entry" VALUES(6,0,'placed_unit','4a70fa67e1a541d892cd6b14f9212c0b','9bcee544a777402f8d9d000724d83c2e','insert',NULL,'{"face":"inside","id":"4a70fa67e1a541d892cd6b14f9212c0b","leaf":"active","lock_point_id":"9bcee544a777402f8d9d000724d83c2e","opening_id":"9bcee544a777402f8d9d000724d83c2e","pattern":"above","version":1,"x_mm":20.0,"y_mm":1100.0}',NULL);
INSERT INTO "change_entry" VALUES(7,0,'own_field','bb6678f7be0642009f3d3f7c67af704e',NULL,'insert',NULL,'{"choices":["AA","BB"],"entity":"existing_item","id":"bb6678f7be0642009f3d3f7c67af704e","kind":"choice","label":"Key group","name":"key_group","unit":"","version":1}',NULL);
INSERT INTO "change_entry" VALUES(8,0,'existing_item','a7df647b190241839cd3baf3e39652e4','9bcee544a777402f8d9d000724d83c2e','update','{"extra":{}}','{"extra":{"key_group":"AA"}}','edited by keeper');
INSERT INTO "change_entry" VALUES(9,0,'import_mapping','2f27ad2b6b96465991f7d60192e506c0',NULL,'insert',NULL,'{"fingerprint":"f","id":"2f27ad2b6b96465991f7d60192e506c0","mapping":{"Mark":"opening.mark"},"name":"Doors","version":1}',NULL);
INSERT INTO "change_entry" VALUES(10,0,'opening_fit','9bcee544a777402f8d9d000724d83c2e','9bcee544a777402f8d9d000724d83c2e','insert',NULL,'{"engine":"program","facts_read":"a5ca83876477bf081178c26357410b22","fit_key":"9f737a60efd3e7749fca3581fe60d2792f2094640b394a4735876f394448155a","id":"9bcee544a777402f8d9d000724d83c2e","input_key":"case","opening_id":"9bcee544a777402f8d9d000724d83c2e","version":1}',NULL);
INSERT INTO "change_entry" VALUES(11,0,'supply','90c62650333f4fb2bd43883f5e83b739',NULL,'insert',NULL,'{"id":"90c62650333f4fb2bd43883f5e83b739","name":"Closet","use":"laid","version":1,"x_m":2.5}',NULL);
INSERT INTO "change_entry" VALUES(11,1,'circuit','7b95992649204447844ff651c60e6c78',NULL,'insert',NULL,'{"alarm":"drops","id":"7b95992649204447844ff651c60e6c78","name":"A","supply_id":"90c62650333f4fb2bd43883f5e83b739","version":1}',NULL);
INSERT INTO "change_entry" VALUES(11,2,'run','f478762b4d7b4447aaed05d6680d028b',NULL,'insert',NULL,'{"circuit_id":"7b95992649204447844ff651c60e6c78","from_node":"supply","id":"f478762b4d7b4447aaed05d6680d028b","to_node":"J1","version":1}',NULL);
INSERT INTO "change_entry" VALUES(11,3,'run','11ec1a51fd11456197c1e9a2083c7568','9bcee544a777402f8d9d000724d83c2e','insert',NULL,'{"circuit_id":"7b95992649204447844ff651c60e6c78","from_node":"J1","gauge":"18 AWG","id":"11ec1a51fd11456197c1e9a2083c7568","length_m":4.0,"opening_id":"9bcee544a777402f8d9d000724d83c2e","stranding":"solid","to_node":"9bcee544a777402f8d9d000724d83c2e","version":1}',NULL);
INSERT INTO "change_entry" VALUES(11,4,'route','22e3fdd5828c4de3b4074816bb92c35b','9bcee544a777402f8d9d000724d83c2e','insert',NULL,'{"id":"22e3fdd5828c4de3b4074816bb92c35b","length_m":6.0,"opening_id":"9bcee544a777402f8d9d000724d83c2e","pinned":true,"supply_id":"90c62650333f4fb2bd43883f5e83b739","version":1}',NULL);
INSERT INTO "change_entry" VALUES(12,0,'hardware_set','a4f46f256b5147e3961f681a0b1e0fd6',NULL,'insert',NULL,'{"id":"a4f46f256b5147e3961f681a0b1e0fd6","name":"HS-1","version":1}',NULL);
INSERT INTO "change_entry" VALUES(12,1,'set_line','43fd89716a654fc391cd974060c00b07',NULL,'insert',NULL,'{"id":"43fd89716a654fc391cd974060c00b07","part":"U-1","quantity":1.0,"role":"unit","set_id":"a4f46f256b5147e3961f681a0b1e0fd6","version":1}',NULL);
INSERT INTO "change_entry" VALUES(12,2,'opening','9bcee544a777402f8d9d000724d83c2e','9bcee544a777402f8d9d000724d83c2e','update','{"set_id":null}','{"set_id":"a4f46f256b5147e3961f681a0b1e0fd6"}',NULL);
INSERT INTO "change_entry" VALUES(12,3,'waiver','098a2f0656ec4e30a1d16ea31f7fb888','9bcee544a777402f8d9d000724d83c2e','insert',NULL,'{"about":"","facts":"f","given_on":"2026-01-02","id":"098a2f0656ec4e30a1d16ea31f7fb888","opening_id":"9bcee544a777402f8d9d000724d83c2e","person":"keeper","reason":"seen","rule":"hand-known","scope":"opening","version":1}',NULL);
INSERT INTO "change_entry" VALUES(12,4,'issued_packet','382cca4581b0432f89974a18d687ee86','9bcee544a777402f8d9d000724d83c2e','insert',NULL,'{"at":"2026-01-02","by":"keeper","id":"382cca4581b0432f89974a18d687ee86","opening_id":"9bcee544a777402f8d9d000724d83c2e","shown_key":"case","version":1}',NULL);
INSERT INTO "change_entry" VALUES(13,0,'assigned_part','5a7e6f0531964803b486d4ba1a870ed0','9bcee544a777402f8d9d000724d83c2e','insert',NULL,'{"id":"5a7e6f0531964803b486d4ba1a870ed0","lock_point_id":"9bcee544a777402f8d9d000724d83c2e","opening_id":"9bcee544a777402f8d9d000724d83c2e","part":"C-1","piece":1,"quantity":1.0,"role":"cylinder","serial":"SN-1","source":"by-hand","state":"planned","version":1}',NULL);
INSERT INTO "change_entry" VALUES(14,0,'opening','8b5f5f104eb0456cae8fc7cb0f60fc06','8b5f5f104eb0456cae8fc7cb0f60fc06','insert',NULL,'{"id":"8b5f5f104eb0456cae8fc7cb0f60fc06","level_id":"951ba3f6fa3d41bca247faca453295d5","mark":"W7","version":1}','added by keeper');
INSERT INTO "change_entry" VALUES(14,1,'leaf','2b6b526e31b647678eb19c838658cb88','8b5f5f104eb0456cae8fc7cb0f60fc06','insert',NULL,'{"id":"2b6b526e31b647678eb19c838658cb88","opening_id":"8b5f5f104eb0456cae8fc7cb0f60fc06","ordinal":0,"position":"single","version":1}','added by keeper');
INSERT INTO "change_entry" VALUES(14,2,'lock_point','8b5f5f104eb0456cae8fc7cb0f60fc06','8b5f5f104eb0456cae8fc7cb0f60fc06','insert',NULL,'{"id":"8b5f5f104eb0456cae8fc7cb0f60fc06","opening_id":"8b5f5f104eb0456cae8fc7cb0f60fc06","version":1}',NULL);
INSERT INTO "change_entry" VALUES(15,0,'opening','8b5f5f104eb0456cae8fc7cb0f60fc06','8b5f5f104eb0456cae8fc7cb0f60fc06','update','{"retired":null}','{"retired":"walled up"}',NULL);
INSERT INTO "change_entry" VALUES(16,0,'delivery','fc43aed57aad43be94ab6385871dfef3',NULL,'insert',NULL,'{"at":"2026-01-02","file":"doors.csv","id":"fc43aed57aad43be94ab6385871dfef3","key":"f","number":1,"person":"keeper","told":{"new":2},"version":1}',NULL);
INSERT INTO "change_entry" VALUES(16,1,'open_question','d15f5fee5b6d48039b3818144f96d4b8','9bcee544a777402f8d9d000724d83c2e','insert',NULL,'{"content":{"before":"LH"},"delivery_id":"fc43aed57aad43be94ab6385871dfef3","fact":"hand","id":"d15f5fee5b6d48039b3818144f96d4b8","kind":"blank","mark":"0012","opening_id":"9bcee544a777402f8d9d000724d83c2e","version":1}',NULL);
INSERT INTO "change_entry" VALUES(17,0,'transmittal','6076f79ce0df401482e8cf6604e19972',NULL,'insert',NULL,'{"at":"2026-01-02","files":{"schedule.pdf":{"hash":"c7833160c63da29c02cf51b6bb898cf53137ae144cebfe2d8ecece1de0d67699","revision":"","size":14}},"id":"6076f79ce0df401482e8cf6604e19972","number":1,"person":"keeper","purpose":"for approval","recipient":"Architect","version":1}',NULL);
INSERT INTO "change_entry" VALUES(18,0,'office','08f92437c9a04871ab0e5d0d2e85b4be',NULL,'insert',NULL,'{"id":"08f92437c9a04871ab0e5d0d2e85b4be","name":"office","text":"format = 1\npaper = \"a4\"\n","version":1}',NULL);
INSERT INTO "change_entry" VALUES(19,0,'building','cc6093d20e1e48189184063b9ce05ff3',NULL,'update','{"occupancy_group":null,"sprinkler":null}','{"occupancy_group":"B","sprinkler":false}','edited by keeper');
INSERT INTO "change_entry" VALUES(20,0,'level','f5695f5b971747c58f95123d6441c0eb',NULL,'update','{"occupant_load":null}','{"occupant_load":40}','edited by keeper');
INSERT INTO "change_entry" VALUES(21,0,'opening','9bcee544a777402f8d9d000724d83c2e','9bcee544a777402f8d9d000724d83c2e','update','{"code_edition":null,"egress_toward":null}','{"code_edition":2021,"egress_toward":"key"}','edited by keeper');
INSERT INTO "change_entry" VALUES(22,0,'person','8505db7a547a420ba69465fce12fee5d',NULL,'insert',NULL,'{"id":"8505db7a547a420ba69465fce12fee5d","name":"keeper","role":"specifier","version":1}',NULL);
INSERT INTO "change_entry" VALUES(23,0,'attachment','cf20b7afdadd4faca34bc41849ce879b','9bcee544a777402f8d9d000724d83c2e','insert',NULL,'{"blob":"508b7b1f113fdf173660d2b3dace45039a6d28f00ee27382c04c93af8213e4c9","entity":"opening","id":"cf20b7afdadd4faca34bc41849ce879b","name":"inside.txt","opening_id":"9bcee544a777402f8d9d000724d83c2e","ordinal":0,"row_id":"9bcee544a777402f8d9d000724d83c2e","title":"Inside","version":1}','file inside.txt');
INSERT INTO "change_entry" VALUES(24,0,'opening_fit','098e87da02a84efaab1b2a0bd81f95d6','098e87da02a84efaab1b2a0bd81f95d6','insert',NULL,'{"engine":"f8d4e373a6522ad5441992e4d143281a","facts_read":"84d8a6f668ce7b7e99626905490ca049","fit_key":"4d1a5b681209a263fbb5d5c98b568915f236ffecd8d4f070f0326407c934a9cc","id":"098e87da02a84efaab1b2a0bd81f95d6","input_key":"c3958cb63914e37cbb2515bb228775eff6bbdf3376a40d5a68374065f72a2b88","opening_id":"098e87da02a84efaab1b2a0bd81f95d6","version":1}',NULL);
INSERT INTO "change_entry" VALUES(25,0,'revision','9feec808c61949d6a4d81e9ac76af3e3',NULL,'insert',NULL,'{"at":"2026-11-29T11:54:00+00:00","id":"9feec808c61949d6a4d81e9ac76af3e3","letter":"A","person":"keeper","purpose":"kept","root":"1f83aca7a8cdb3f5284d82555bc7579e5ce91030ef85a83309e3afa395c6baa7","version":1}',NULL);
INSERT INTO "change_entry" VALUES(26,0,'opening','9bcee544a777402f8d9d000724d83c2e','9bcee544a777402f8d9d000724d83c2e','update','{"hand":null}','{"hand":"LHR"}','edited by keeper');
INSERT INTO "change_entry" VALUES(27,0,'opening','9bcee544a777402f8d9d000724d83c2e','9bcee544a777402f8d9d000724d83c2e','update','{"hand":"LHR"}','{"hand":"RH"}','edited by keeper');
INSERT INTO "change_entry" VALUES(28,0,'opening','9bcee544a777402f8d9d000724d83c2e','9bcee544a777402f8d9d000724d83c2e','update','{"hand":"RH"}','{"hand":"LHR"}',NULL);
INSERT INTO "change_entry" VALUES(29,0,'opening','098e87da02a84efaab1b2a0bd81f95d6','098e87da02a84efaab1b2a0bd81f95d6','update','{"hand":null}','{"hand":"LH"}','edited by keeper');
INSERT INTO "change_entry" VALUES(30,0,'opening','098e87da02a84efaab1b2a0bd81f95d6','098e87da02a84efaab1b2a0bd81f95d6','update','{"hand":"LH"}','{"hand":"RH"}','edited by keeper');
INSERT INTO "change_entry" VALUES(31,0,'opening','098e87da02a84efaab1b2a0bd81f95d6','098e87da02a84efaab1b2a0bd81f95d6','update','{"hand":"RH"}','{"hand":"LH"}',NULL);
INSERT INTO "change_entry" VALUES(31,1,'opening','098e87da02a84efaab1b2a0bd81f95d6','098e87da02a84efaab1b2a0bd81f95d6','update','{"hand":"LH"}','{"hand":null}',NULL);
CREATE TABLE change_reference (
	row_id TEXT NOT NULL, 
	change_set INTEGER NOT NULL, 
	CONSTRAINT pk_change_reference PRIMARY KEY (row_id, change_set), 
	CONSTRAINT fk_change_reference_change_set FOREIGN KEY(change_set) REFERENCES change_set (number)
);
INSERT INTO "change_reference" VALUES('ace34c25a72d4e00b83cae4ffc05d15f',1);
INSERT INTO "change_reference" VALUES('cc6093d20e1e48189184063b9ce05ff3',2);
INSERT INTO "change_reference" VALUES('f5695f5b971747c58f95123d6441c0eb',2);
INSERT INTO "change_reference" VALUES('951ba3f6fa3d41bca247faca453295d5',3);
INSERT INTO "change_reference" VALUES('a7df647b190241839cd3baf3e39652e4',4);
INSERT INTO "change_reference" VALUES('9bcee544a777402f8d9d000724d83c2e',5);
INSERT INTO "change_reference" VALUES('9bcee544a777402f8d9d000724d83c2e',6);
INSERT INTO "change_reference" VALUES('9bcee544a777402f8d9d000724d83c2e',10);
INSERT INTO "change_reference" VALUES('7b95992649204447844ff651c60e6c78',11);
INSERT INTO "change_reference" VALUES('90c62650333f4fb2bd43883f5e83b739',11);
INSERT INTO "change_reference" VALUES('a4f46f256b5147e3961f681a0b1e0fd6',12);
INSERT INTO "change_reference" VALUES('9bcee544a777402f8d9d000724d83c2e',13);
INSERT INTO "change_reference" VALUES('951ba3f6fa3d41bca247faca453295d5',14);
INSERT INTO "change_reference" VALUES('fc43aed57aad43be94ab6385871dfef3',16);
INSERT INTO "change_reference" VALUES('9bcee544a777402f8d9d000724d83c2e',23);
INSERT INTO "change_reference" VALUES('098e87da02a84efaab1b2a0bd81f95d6',24);
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
INSERT INTO "change_set" VALUES(1,'5037bed4fffb4f6dadb27cc4365c1162',0,'2026-11-29T11:54:00.238+00:00','keeper','vm','36ae36b41c6540ad84053f61f5238948','import-catalogue','Catalogue','edit',NULL,3,'d3b76159e3210b0c9d33f61a725db6f53514aed44080817706b3b523e2e7f7c4','5f0514dcb8e6f1e637d73b6b2c65bb21b890ced55fbf74c96fb3c3746086e47d');
INSERT INTO "change_set" VALUES(2,'efe1e1a03076450492ca4cd6700d9935',1,'2026-11-29T11:54:00.250+00:00','keeper','vm','36ae36b41c6540ad84053f61f5238948','add-opening','Add opening 0012','edit',NULL,6,'0100f379e489b64cf3367b1843f8f161901ccab1bf0cf5934f9ab3aab1517b89','f32b453fc164cfadbeb22bdaa2ad2bcf7dd5ba16120a9ceddb1786728e0c41b7');
INSERT INTO "change_set" VALUES(3,'6293e21beff7425eb82144f437c4c196',2,'2026-11-29T11:54:00.264+00:00','keeper','vm','36ae36b41c6540ad84053f61f5238948','add-opening','Add opening 9E4','edit',NULL,4,'2eac38fc008d690f3b74908b0a79610c77517e3ff399789f3be6c2e478f818c0','24efbde16670a9561847bd2b201995882f13ead762257e6ef467b7e6845e8ef8');
INSERT INTO "change_set" VALUES(4,'a92f579a5d17473a80965511a344a5d2',3,'2026-11-29T11:54:00.271+00:00','keeper','vm','36ae36b41c6540ad84053f61f5238948','add-item','Add existing item lock to 0012','edit',NULL,2,'b50811308e5d16b95ec91b1d0194fecaceaa5d07498fba73d5184226019095db','fa6760dea6d58d622a31ef0d21c858e5b2ca5332d79f6c1e7845a6f004a312fc');
INSERT INTO "change_set" VALUES(5,'a7808f66c2004ed2a5e1b466d04ccce7',4,'2026-11-29T11:54:00.290+00:00','keeper','vm','36ae36b41c6540ad84053f61f5238948','choose-part','Choose C-1 as cylinder of 0012','edit',NULL,1,'41cb84a5a07dc4494abeb6eda0b16b64171656709b44189746fe304738f9e004','184c58261d73c97d987526a78bcaaaad92cd432798a427364c6be946738eea3b');
INSERT INTO "change_set" VALUES(6,'f105a8fcf2e74cfc857bcda66f8a2f53',5,'2026-11-29T11:54:00.294+00:00','keeper','vm','36ae36b41c6540ad84053f61f5238948','place-unit','Place the unit of 0012','edit',NULL,1,'5734a51470cabfa8fe783a96c703f246c952d1ef03a9356b54bbd6dc43f551fd','16e42a7737b7fdf71a660130bb18e26e172e0b97af6b87a20143a96e96f8c236');
INSERT INTO "change_set" VALUES(7,'d9c3d09d0b444cd7b1555e0341534a59',6,'2026-11-29T11:54:00.297+00:00','keeper','vm','36ae36b41c6540ad84053f61f5238948','define-field','Define field Key group','edit',NULL,1,'39584ba5766143798804928f7edb26d82bd196cca082134c84246f9459e1683f','a44a0cfc363d7e1e14e069f1b0debf5c2b4aa7dbd5b9c3fbd89a95c74fe9a03e');
INSERT INTO "change_set" VALUES(8,'a6be963187b84433b6f1fb30b5e4607b',7,'2026-11-29T11:54:00.305+00:00','keeper','vm','36ae36b41c6540ad84053f61f5238948','set-own-value','Set Key group','edit',NULL,1,'d5b5c4a2c3218077852360a3a441bfb453eacf3ca1d22fdac94479f37e501d6c','198e7d03051ae05395cafdb84fc0f7bb94ef667eda5eea957738b1dfdbce3788');
INSERT INTO "change_set" VALUES(9,'b7f0704b565f401da208944d8bcd9672',8,'2026-11-29T11:54:00.308+00:00','keeper','vm','36ae36b41c6540ad84053f61f5238948','import-survey','Mapping','edit',NULL,1,'357b54094d4f6775dc0462a35bc62302c0202d94d0006c8e6f0f03968d28fea0','0bd55bdd8db8a8be7573a2e790416b444a672cfb4b142d774ab92df94365c52b');
INSERT INTO "change_set" VALUES(10,'c54255e228bc482596615979972130e1',9,'2026-11-29T11:54:00.316+00:00','keeper','vm','36ae36b41c6540ad84053f61f5238948','fit','Fit','edit',NULL,1,'cff5949a905c7eebd212346382efa6cff587c439d58a9360667b735bf6a6bcf9','86719db061c0dcac95980078519cd957fe87556e89d62921fc1fe587aad274e3');
INSERT INTO "change_set" VALUES(11,'6172c7ee3cd1471b9c76ac038f6706ff',10,'2026-11-29T11:54:00.320+00:00','keeper','vm','36ae36b41c6540ad84053f61f5238948','lay-supply','Power','edit',NULL,5,'c2a8e8de0ad1a71e56c69f5f1a60c5cd13ee8a36fac5dba20f4f2ae41531f51f','43b97b10471b8f361711c7ccc912f2e9fbe85ebec5dba2d8dcc2da64f5448323');
INSERT INTO "change_set" VALUES(12,'949feefd39cd4b738a887c431b245245',11,'2026-11-29T11:54:00.326+00:00','keeper','vm','36ae36b41c6540ad84053f61f5238948','make-set','Sets, waivers, packets','edit',NULL,5,'7972db573ff00633a558b4f2d75289deda16e246bdea563258e8fbe19789e97a','33b0ea272de2d38ff63e29c3ec578ce56efe188b9fc9434d9d30a43aba88b2a1');
INSERT INTO "change_set" VALUES(13,'fa97793f7ddb4478b3cb6e898a4b54c8',12,'2026-11-29T11:54:00.336+00:00','keeper','vm','36ae36b41c6540ad84053f61f5238948','record-piece','Pieces','edit',NULL,1,'10c606f0799d3f22db8207d7f394077d5fc9850886617639f76866c204e606c1','2c79f54b623f8d763f75fb9ed7b907ac5e76d5388c644ba06856739e03c2064e');
INSERT INTO "change_set" VALUES(14,'6636a316bfb347b38707d82ee51f1fe7',13,'2026-11-29T11:54:00.340+00:00','keeper','vm','36ae36b41c6540ad84053f61f5238948','add-opening','Add opening W7','edit',NULL,3,'80fbfd47aa58bd9558f2ca772d6178bb3a5ff121c417d5cc7eb914c873b4212e','07e02366a626c0bce274f6cff26f833d7b4089da9a4b150d3b637994577f14ee');
INSERT INTO "change_set" VALUES(15,'d448d2fb5c9043b6bbea07dce8297c52',14,'2026-11-29T11:54:00.350+00:00','keeper','vm','36ae36b41c6540ad84053f61f5238948','retire','Retire opening W7','edit',NULL,1,'422e6084858ab17e07ad0465313e3a1d8444037b673d1fe56ba65ebe9fc07176','ca178cca5ccd0470962642e02199d5e476e75aca7472b374e941ee31f2fcd0bc');
INSERT INTO "change_set" VALUES(16,'fb59b7fa89b14e8fb879d683282f178c',15,'2026-11-29T11:54:00.355+00:00','keeper','vm','36ae36b41c6540ad84053f61f5238948','import-survey','Delivery','edit',NULL,2,'be1c87261a4085e2953b109f585c75c71d0cbfafe3b91ec0f155eac9ae68c147','c1f88dc54f9f1ea76bafecf3639082ba35ff733769e9e6d7cc094859b95e200a');
INSERT INTO "change_set" VALUES(17,'3ba8236e51f844e08082c6da9d9de286',16,'2026-11-29T11:54:00.361+00:00','keeper','vm','36ae36b41c6540ad84053f61f5238948','transmit','Transmittal','edit',NULL,1,'800532d9dc898198a6ce6a727d24c04f550ec6cdf589dbe85afe3ffadc9c67d3','24ac6f5380725b61ce1d54030e5c408f0ecdea6edb229d58497497a1e197a53c');
INSERT INTO "change_set" VALUES(18,'d1262927e6944c2ba7e9728e572c60df',17,'2026-11-29T11:54:00.364+00:00','keeper','vm','36ae36b41c6540ad84053f61f5238948','set-office','Office','edit',NULL,1,'be2a2196146402af1c1798e86a52a33a6a517817c582a8307b8fdcceff759d87','3e2ce93d123d9e0f5bb68d1f27e4e71037e75746b733934c8f87f3f3c195262d');
INSERT INTO "change_set" VALUES(19,'b131c163e0574037b6a008a25b2c06da',18,'2026-11-29T11:54:00.372+00:00','keeper','vm','36ae36b41c6540ad84053f61f5238948','edit-facts','Edit occupancy group, sprinklered throughout of Mill','edit',NULL,1,'9c0123a20fdb1e884ff28112ea8465c043b26fb989b64c6efa3d92222c8979f7','4a2ebdba8a9269ee22fc8d2d853b4075a96ac605a7d7ea18bec604743f8a1817');
INSERT INTO "change_set" VALUES(20,'01699abe9ad44fd99fc4d49172ade0b5',19,'2026-11-29T11:54:00.379+00:00','keeper','vm','36ae36b41c6540ad84053f61f5238948','edit-facts','Edit occupant load of 1','edit',NULL,1,'0c0ab1c1fd817e4c648d5704b2ebd10d9d38a650cc63d709da9e4b755d16e9e7','df51d76b966c82e18bc4b195b119a89b14bdfb94d603b3c77bbc9dffb30cc2a5');
INSERT INTO "change_set" VALUES(21,'d144972f706a4504bfbc20f7bee8e59f',20,'2026-11-29T11:54:00.384+00:00','keeper','vm','36ae36b41c6540ad84053f61f5238948','edit-facts','Edit direction of egress, edition of the code of 0012','edit',NULL,1,'956f71d3c56e35d8b1707d6ee0eff1c303b4ae6bcfc0c5c9566f9a413a98580b','25f2cb2c3259c46bd1b1746cd900dda56bf96c62ad30e9b5631ab4fa85fa2e5e');
INSERT INTO "change_set" VALUES(22,'a922505f47eb416ca497d143a95db9e9',21,'2026-11-29T11:54:00.388+00:00','keeper','vm','36ae36b41c6540ad84053f61f5238948','add-person','List keeper as specifier','edit',NULL,1,'b9f8f616f36039d11efd3e350e1bfe92d4062fae35729e4b755e51a3d39bc2d6','8da50792d5f87ea6eb99d5743829bd1562a6312cd7b79dd9cfbcbdcf7cb0a532');
INSERT INTO "change_set" VALUES(23,'09f1899371e3462fb76176d13296fc5c',22,'2026-11-29T11:54:00.395+00:00','keeper','vm','36ae36b41c6540ad84053f61f5238948','attach','Attach inside.txt to 0012','edit',NULL,1,'594508874da5e94e56ae2c66653d5dd891a30e80b3406ee71d17a417ba244efb','f4735d8988a9d9ba903b02006fdbab2045ef623f2b404c9810315081baa6ff02');
INSERT INTO "change_set" VALUES(24,'742d2d9d81e94ea7b35550009bbd93e4',23,'2026-11-29T11:54:00.602+00:00','keeper','vm','36ae36b41c6540ad84053f61f5238948','fit','Fit 1 openings','edit',NULL,1,'cb36afcd802a442d0f7b0800245a777d6b18366906ffbcfa4cb833785ce484e4','a2c4b8e9b3073dda88693b3ae617f42ce702df8d098283949d5ae57728f61702');
INSERT INTO "change_set" VALUES(25,'cac21fc5245f4f3490c5e1aa78cadd35',24,'2026-11-29T11:54:00.887+00:00','keeper','vm','36ae36b41c6540ad84053f61f5238948','freeze','Freeze revision A: 2 openings of the whole project','edit',NULL,1,'5956dbb0753cf42e0a363006adb7fdbdf2eaba53f8875144a9b131cd0046a90e','225ed42bf3bd2c56504d6929b665fac3e18a7582545bf7dfa97aac7e01ac593d');
INSERT INTO "change_set" VALUES(26,'455edc3acf404e01b19bde6e42c7d61a',25,'2026-11-29T11:54:00.895+00:00','keeper','vm','36ae36b41c6540ad84053f61f5238948','edit-facts','Edit hand of 0012','edit',NULL,1,'e9bd6960fafa93c3e14cce020338348975c2dfccd461a36c376421c20aa2ace1','6144eceef974e60c16f6accb9d489ef3794c6d7812fb9a1836628baa2f2c5508');
INSERT INTO "change_set" VALUES(27,'8ce57b26bb034426aaf94f44f4555c88',26,'2026-11-29T11:54:00.900+00:00','keeper','vm','36ae36b41c6540ad84053f61f5238948','edit-facts','Edit hand of 0012','edit',NULL,1,'531c38d62b3958872c5c3129d76c7cb8a1f55545b73e01f58012121b4b3094e0','39ceda737c377806e2d1a126ad66cfe5cf5d08592bdb5655af7ea8b8cfaa617e');
INSERT INTO "change_set" VALUES(28,'9e273bb2be8549e3bc70461c923f8978',27,'2026-11-29T11:54:00.921+00:00','keeper','vm','36ae36b41c6540ad84053f61f5238948','undo','Take back step 27: Edit hand of 0012','undo',27,1,'e65cd8d6564f99b2c8c9f11c4b29f16da38cdf0f6661a3c76d0d0ec5e7ead776','a34e537943db041527a8b02cfded2c8b8c0426415087650c90ce41b585aafeb0');
INSERT INTO "change_set" VALUES(29,'f32d447b526c4034af2a26f2bdd3fcd4',28,'2026-11-29T11:54:00.925+00:00','keeper','vm','36ae36b41c6540ad84053f61f5238948','edit-facts','Edit hand of 9E4','edit',NULL,1,'08b38f0498b636aa3eaef5251d175f6805ca5ea6aa4d984eaad742aef597056a','52ff7087f8354bd1ba1f856e0711a98bfb83eabf5eb5a611523c2deac8a81e85');
INSERT INTO "change_set" VALUES(30,'e0612f348539446e85c1b533352d407c',29,'2026-11-29T11:54:00.929+00:00','keeper','vm','36ae36b41c6540ad84053f61f5238948','edit-facts','Edit hand of 9E4','edit',NULL,1,'6c403fc9066347b8fd6f29c4e14f76db7e409e2e12871b2a90e8e02e3bd326c0','5c592af611ac6f93fd124439ff8266eb0c2a1d9ea456b925bf26bbbd54eb5947');
INSERT INTO "change_set" VALUES(31,'0edd028bc47940548bd821104f99d50c',30,'2026-11-29T11:54:00.948+00:00','keeper','vm','36ae36b41c6540ad84053f61f5238948','undo','Take back steps 29, 30: Edit hand of 9E4','undo',29,2,'34cc26d3d6b63391840ac04d13b91f6a2f3551403305e209b0afa3902889850a','08abe13dcc7da8ee3f0fd7b717f535a5ed58847cf16cbdc6b3e831bfd4f34ab1');
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
INSERT INTO "chosen_part" VALUES('4b833a1dfe264a8493f5ddffda4d5ab4',1,'9bcee544a777402f8d9d000724d83c2e','9bcee544a777402f8d9d000724d83c2e','cylinder','C-1',1.0);
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
INSERT INTO "circuit" VALUES('7b95992649204447844ff651c60e6c78',1,'90c62650333f4fb2bd43883f5e83b739','A',NULL,NULL,NULL,NULL,NULL,'drops',NULL);
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
INSERT INTO "delivery" VALUES('fc43aed57aad43be94ab6385871dfef3',1,1,'doors.csv','f','2026-01-02','keeper','{"new":2}');
CREATE TABLE engine (
	"key" TEXT NOT NULL, 
	program TEXT NOT NULL, 
	parts TEXT NOT NULL, 
	CONSTRAINT pk_engine PRIMARY KEY ("key")
);
INSERT INTO "engine" VALUES('program','0.1.0','{"fitting":"code"}');
INSERT INTO "engine" VALUES('f8d4e373a6522ad5441992e4d143281a','0.1.0','{"attributes":"064026d099b79db6e7a87abbf8cc656b","calc":"aeaea7a38f616a0479ea445fdaeaa97f","catalogue":"fde934a1621fe70e2f25a738af73a730","family":"f1370ffd80a399f8096e52df29b5d53c","fingerprint":"ec19441270b1cf62c9ac718a54c03509","fitting":"aaab36511077dcf1516805c89363c182","hwsched":"c4a96cdca046aeaecf37a157d67b6c01","keys":"b04933dda784a9520271656ded958775","outside":"acb860361b5b7f575d1c3e0dbde52f19","paths":"60e302995b63b5195fa21074b2edd36a","quantities":"ea4b20f11a4dfc29d6b5b2f8eb98f8d3","rules":"300bb3ad6737fffb8678750f4d8f4eb6","survey":"3641ce011fcbdb2605d3469eaeda0593","tables":"97e87a111f65c75ba1ebdef10f5b6fc5","telling":"de1898b954ba9f75a117331f7edbc452","values":"adbb3e943b083e54de75f14736fcff18"}');
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
INSERT INTO "existing_item" VALUES('a7df647b190241839cd3baf3e39652e4',2,'9bcee544a777402f8d9d000724d83c2e',0,'lock',NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,69.85,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,'{"key_group":"AA"}');
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
INSERT INTO "frozen" VALUES('e4d78400bfdb8677d8ffac0c5b493dba4b1cdbccdd1839ead447c159c3f9503c','engine',X'7B2266696E6765727072696E74223A223631333262333862663131336636623233353237333937353562346164316162222C2270726F6772616D223A226877736368656420302E312E30227D');
INSERT INTO "frozen" VALUES('d01372fcd5f4a830e4bb59fc75d1e27a66be344e42c979825f007e2228ce8bb9','fit',X'7B22737461747573223A22746F2D6D656173757265222C227061727473223A5B5D2C22737461636B223A6E756C6C2C22706C6163656D656E74223A6E756C6C2C226361626C65223A6E756C6C2C22686F6C6573223A5B5D2C22706F776572223A226E6F6E65222C2262617474657279223A6E756C6C2C2272656675736564223A5B5D2C226E65656473223A5B7B2266616374223A226578697374696E675F6974656D2E6C6F636B5F666F726D222C226C6162656C223A226578697374696E67206974656D3A204C6F636B20666F726D222C22626C6F636B73223A227468652063686F696365206F662063796C696E646572206F72206C6F636B227D5D2C22636F7374223A2230222C2263757272656E6379223A22222C22636F73745F6E65656473223A5B5D2C226E6561726573745F6D697373223A6E756C6C2C2272756E6E6572735F7570223A5B5D7D');
INSERT INTO "frozen" VALUES('53902b2513ba374dd07587c60671ee33ee8e8b58e897eb859b4bbd0caef5de26','findings',X'7801C557696FDB4610FD2B037EB20149B00C1429E84FAE63A3E99104890B14080261B91C891B915C6297B4AC06F9EF79B33C4CC5F211D769014330877BCCBCF7E6E087CF916B728EE2685DDA4D394D78691D4F5367F23C9A44A9F1DA54B92965856FDC156F61F57CC5CED45BD836CA95A65CC158B0F76A25EBFE2AC3593195CCA9A79CD532A63FF04B1B93D6D9C9D892B15965F58EA9CE8C5E97386DC75AA81A77AAFC846CC572654C17C6313955E361060712E58DC7F5DA16852DA9724AD746734C75C6E14A52654A9B4CD5E46BFCEB09AB4C4D296B93325E308E93B54D09EBCAB2C7A1BA7112D2992DAA9CEBF67D8B433C0EE3870676A5F206CEC49FBF4C2295D8A686433D4101E228FE1009CAB3E0C6A228E078786ED11D19066C47B61E596CEAA09DB5A0461F27E0D75C711AC54B957BEE1F1789508FF59535A578137D99ECD791F1BE612C7C0E1D0DBC9F6A0D75982407FB40834792385F39BC82391F5BDFD7CA384AAD75A3A5BF4202F7CA46ABA636B6F4B4B4796E37B474B6200E174C4441C64DC8B1D259D05586E310E87D7AF94101EC93478FFB208F9E59356037A2BB0D6A6408D18D9E4370FF5E0DD6A5EC70ECB3AAE14D5B0EC0922B46F49E5F5716893A96C1A85EEC9496212976AC7D5A9C105F1B2F4506C5820B5432ABD7E1B67BD5238564D898CB16A93E4329EA8A8E3C57CAD50F959A413AFF6FB4FBA4D6937A4B6A42C84843DC1132327565A62B56030DFB6B530FE642589809A28B70C39364B934F5147D22D4F46F05995ADD145C064E1EE87497A00F4791F1681A3B4DAFF7F63ECD7CB2099A8FD7CE545268D02F2D30109D795AA1E27B4E2724AD768B3AB36CBCCAC9ABADC7919ECAA648422EDD5D7082E0C43BB552A614B1EEA30FE681B9DEE96781B8AD34D3CAE646CBD0B093F4D2A351A31035E2C5CB07707E6D139B6E29531E081869E2960AB50DA30049DF9E60B4A833D80DCAB1769C823F0C0B93AEE533F2CC0994609514DAFC9AABFADEF45D3380969595B32BA78A82D370567786ECA764DB4E1392C4989D708338D866F6A8179CFA75C8FB76892D3534635D30258DC953201053B6F13AC31DED6C419C82B7B7EFDEFC767E76497F9EBEFB9DFAA5D4E2BA6871A5CBF3BF2F1F41ED939224748129A641C0E66E5138348D117710B074FB3B47C1A18CDD74E4310BAF7E39A3F9D1FC68763C7B4107C747C7F3C3137A7DF1F654AC137A01FB7CF6D3EC673AE06B0D06A43BC700B371E8C7185B4119805DF286D19A3DE7AC6B40DA077028366DCB5421A1B4ADCC8303DE3E77E932437AE24F5195AB52F42B790B05E217466D314B62A40EAC8A327295707E53FCDB56E227817F95DA4A5C944D9DA5A9332BB335B47425677F6A9CF1A9C1288B69555A08D2894B948661C0ED1477970AFA5E3E647917D5AC7DF1246564AC44B6D325466C695D3BB97D47FD7CB43664301B35F29DAE3D3072819C64D480FEA3E07B3F32FA9D63F975515112DAB55D82CD4CB9149F384C213BF1A1844C857B5092F9078CF5A780CE96E683F72F5FD17C3E9FBEFC466CDB43C07477AD8E6FBE6AFEF3F0F775850E0AF87C4B366116BCF5A97063580A338B1E199CF0B82F9361C37708F2E3570D7017AF');
INSERT INTO "frozen" VALUES('7dbcbfc730d20f59dad5e59377ae9ba26681b152593fe4d9634100c18732345b','opening',X'7B226F70656E696E67223A7B226964223A223039386538376461303261383465666161623162326130626438316639356436222C226D61726B223A22394534222C226C6576656C223A22726F6F66227D2C226C6561766573223A5B7B226964223A226661383962363565356361653437373038336130393933633838353839626566222C22706F736974696F6E223A2273696E676C65227D5D2C226974656D73223A5B5D2C22706F696E7473223A5B7B22706F696E74223A7B226964223A223039386538376461303261383465666161623162326130626438316639356436222C226974656D5F6964223A6E756C6C2C226E756D626572223A312C226E616D65223A22222C226F7468657273223A5B5D7D2C22666974223A2264303133373266636435663461383330653462623539666337356431653237613636626533343465343263393739383235663030376532323238636538626239227D5D2C2266696E64696E6773223A2235333930326232353133626133373464643037353837633630363731656533336565386538623538653839376562383539623462626430636165663564653236227D');
INSERT INTO "frozen" VALUES('7255729aae286381c5ccc4f1c81773c372284dba25cd2a03191454743d58f129','findings',X'7801CD584D6FDB4610FD2B039D5A40126C1F7AA04E8191A23582A668D35310082B72282EB4DC257649314290FFDE37CB0F518EAC3AB603F7605B9AFD9A7DEFCDEC8C3F7E99F9C6F02C99E5BA5EB8063FF9225335CFE6B34C875457465B19CE5CDA946CEB8081C07BF6BA3EC0DC2A6FB5DDC25872086A2B53FF7084CD28750DA627848FAD0AD43ABFE38C70046D0EA42CB1F246B327EC15B4B3E472AA0BA6CABBAD57E51C533218742067994A75A0801F8729BED581973872A3820E38307565890D2AAFD25AA7E27ADA78F1E46F666A0B5553A6F31CC7F49BAA1DC3AB848A36A485F854B15C227AFDE75FEFEFDEDE7EA0C522689BF2A2A9E04DC62B6A755DC0EAD9B00A58A44C70D89C3D93A24AA53BC63D0190DC509CDB2BD330BCFBF2753E531B18E10FCC963983F5E3A739B0D37BCE66498EAD78F8BADE08AC9858396DE39AAFF391A3EE9817A2E98380DDF90DE86FAE6E7E595C5D2FAE6EE8A71D73C5FE6712EC4D068AEA027C0939391006A5C1950C6A00590166538C6E814804EC51BCFC1E42C31DDB9D036AABB49DB02367E1E848FD065328F7AE8C0B82AE23F73F02DE9D75AD5D6C38779E1799D7C680879328088DDFF301D6FF08817F6CDC2BA1483741327942EFF01B32CAEA6235B514ACB7457D6202B6E9CE22A04EAC25C2D26B6556836013FA55437E5ED5A06245FC5907F9046D7399D0ED01A12BEC417D7B50679CF317D84922BCE2698CBC1836A146104A004A10679CEA4CE249242F043516D6AD83C8C780BB756565B8EEC63BB092E95D5FFFF6E77433503DC4E64C5058465FD76589DBC5EF1D4F13C3C8D2C4367084457D565976F4C030F0B3167E96694FCFFAB8EF9372C28968B504168E7A09D1F6FE27F4264D2145BD31901AF21872E138F476EB3104B3995A7F836A2E2A2D554D8D941F2877C6B8B68B6E8E7BCD09A2D37E4E9E555A442922BD64B8539FD3CF4A6C74E8C9BE9ED3C580E6A88B8152352232E1B9F37F62887E3F9F53E711C42FCDE9FBE1C973BE9CF2F9B97208DB299927294602A14F64A3FA1FC85183DAFB6CF4CE4916C76917852169655C6864495705704C22430A925995F2B11679942A5EF7B6E7A43590FA8DB404A28986B82764621AF349CC4A230DE793D00066977304D1753CE149B24CB54F1B948931E5DC5764E5DA28D347BF8C8EE2120A4D559983141B69E1025B5109DD1A7C8C75D403455E82AA6BEF4C8D92138F114A3CA931ADC3DF639D892DC5828A52EAAC6F3208EA9878F452B424B23C4754E7080647A6268B66AF0FA3C48261BB4571DA17D0BE0184522EF5C0D68EEEAE05DEA62B4A2E06E00B808AF3979D47EB18ECE750BDBB9E223A5DF13F8034963E5757D7379479D5860974B1999192D7762D4E145ED7E7FC685487A7079DD543529D423A99FE3C44C7E0392929BE37D8513442A89EA4713C90712A43B325A5A5AEC318C62833FB0C436F44CC8FC80191AAA3B4852ACFE90E1D231AB47AA868431D9F91DE503A7CEF9853B5326E8B56445E99AE5C455F878A04ED9EE4146CA7D198CA032CDB6DD07D8A6DC4E4DEE3739250563495F5F8C62E2F1038DE7ECAE434DDCCD1AC1F830BB39E4D73EC41FDA2B192DE62923CE1F981AE1F5955AACC7B2DBFCDA4F988793222DFED2D4C4A25D4BD1A40FA4025FAAB95B41492B3B76882ADFC4BA0EB3AA5D938F6A24094D95E882D78D193F041BA7AC986FDB1D2363E1429477F26487F472EFFF42F2FA3EFDE');
INSERT INTO "frozen" VALUES('bffd645ac5cd39f1ee60312c2978d7485881bb8d6ea152086257876b1d3d6c0b','opening',X'7B226F70656E696E67223A7B226964223A223962636565353434613737373430326638643964303030373234643833633265222C226D61726B223A2230303132222C226275696C64696E67223A224D696C6C222C226C6576656C223A2231222C227374616972223A747275652C226567726573735F746F77617264223A226B6579222C22636F64655F65646974696F6E223A323032312C226F63637570616E63795F67726F7570223A2242222C226F63637570616E745F6C6F6164223A34302C22737072696E6B6C6572223A66616C73657D2C226C6561766573223A5B7B226964223A223134616162636364393536643432323261316566333733646631646462363130222C22706F736974696F6E223A22616374697665227D2C7B226964223A226239653361613036313733633433323061623336396536306661356265386462222C22706F736974696F6E223A22696E616374697665227D5D2C226974656D73223A5B7B226964223A226137646636343762313930323431383339636433626166336533393635326534222C226B696E64223A226C6F636B222C226261636B7365745F6D6D223A36392E38357D5D2C22706F696E7473223A5B7B2263686F73656E223A5B7B22726F6C65223A2263796C696E646572222C2270617274223A22432D31222C227175616E74697479223A312E302C22736F75726365223A2262792D68616E64227D2C7B22726F6C65223A22756E6974222C2270617274223A22552D31222C227175616E74697479223A312E302C22736F75726365223A22736574227D5D2C22706C61636564223A7B226C656166223A22616374697665222C2266616365223A22696E73696465222C227061747465726E223A2261626F7665222C22785F6D6D223A32302E302C22795F6D6D223A313130302E307D2C22737570706C795F6C696E6B223A7B2270617274223A6E756C6C7D2C22706F696E74223A7B226964223A223962636565353434613737373430326638643964303030373234643833633265222C226974656D5F6964223A226137646636343762313930323431383339636433626166336533393635326534222C226E756D626572223A312C226E616D65223A22222C226F7468657273223A5B5D7D7D5D2C2266696E64696E6773223A2237323535373239616165323836333831633563636334663163383137373363333732323834646261323563643261303331393134353437343364353866313239222C227365745F6E616D65223A2248532D31222C226F776E223A5B7B22656E74697479223A226578697374696E675F6974656D222C22726F775F6964223A226137646636343762313930323431383339636433626166336533393635326534222C226E616D65223A226B65795F67726F7570222C2276616C7565223A224141227D5D7D');
INSERT INTO "frozen" VALUES('98800f64ca4e57ac992b8c11504f34ada248e98ef9426cf8af812ac0b89a0e3b','chunk',X'7B223039386538376461303261383465666161623162326130626438316639356436223A5B22394534222C2237646263626663373330643230663539646164356535393337376165396261323636383162313532353933666534643936333431303063313837333233343562225D2C223962636565353434613737373430326638643964303030373234643833633265223A5B2230303132222C2262666664363435616335636433396631656536303331326332393738643734383538383162623864366561313532303836323537383736623164336436633062225D7D');
INSERT INTO "frozen" VALUES('b0801881d38113a52d0e8b664ca550017e4d37617c364eb7f3ba977dcdd52109','supply',X'7801ED584D8FDB3610FD2B844E2DA018FEFEDAD322280AA4452E4DD14310189444ADD8A54895A4EC188BFDEF7D434AB2379B5D6F5A24688B023E8832391CCEBC797CA3BBC40AD72A9F6CEF12D7368D3AD2932C926DB219E7CBE972319ECD66E5BCCCA659319FADD7B37221D6B36C35DB2469A2792D30F3B5324E788CB356AA42EA9B64AB5BA5D24489BD500F06BBBA1F368AE7581C277EA4F7D3D1224D8EA719563A711A35DCC2CB38BD75B4ADE2F0139B72EF8585DFF1BF3894C2F52F9CE7BAC88EBBCAB47678E945DD08CB7D6BC52EEF676AE34FCB729E498D5305B3F769924B9BB7D2C3C2FBBB7E30C46A956D169BCD7439DF4CC7F3F97CB59ECFCB72B998E4CBB158E6AB35DC8CD1DD7D6168AFB1F220ED10A8CFFACDFDCEE8533095AC2522B2E3FDB9B8E216F14D0A6B1A07830FCED9CD1ECEF93F0A9E4381038872B1DB23F3C04421F63227C8BCFF40512DFA47DBEAEE65DE5A2BB4A75CD082DC28C51B27505F34340183A160C8426542F59C1227B56D5D751A3FCA6C634DA6441D41792B35D56DAB6FB53968E4B916CEF11B2A155F09A684BEF1153325A3115C64A535358BF966DEB03713261D3B2DD742146439C1DC515C8D72849F705BC3E98865ECC333D3A250923793E43EBD4B9EF1E35071CFC6E3C99415961FDCD97E5B263DABB863DAB0128F9E66E6A6D5A838C4B677A5DB7A84298F3CD964B9108BF99CAF56ABF9785AAE8B4D311E8F57D379B19EE55371E669728F6320376267CA52102D74E9A07385335F34060335B7B761329D88DC89959A4CD6ECFAB71F99332A101492644A9A77F7307217B700691077057C50D1BE82A53DB0839DA57311361DAF8C023DA60F533564AA0FD7A1024DC2126BCC41D83EF5487A5E81C10108635947E614A04F7805A0360AFBEF3A78DFD16E11049389C8277C31298BC964BE584E36AB7C22367C3A46E0578B25F11F816DD75D18004A9A78D30F43F8FA19A8A208A538230E5F10AA01A0DBF9689C2637BC0DC88FB9C076CEDB21964366B8E54AD11535499378C124986A2AB0E598ACF01A8419B041AB1DA0926C4BAE9CA0F0544215A7DAE4CEB53515F67B0A306E5549C9CB05038EA9E0C0C8B5D4DC4BA3DD591186E7EBE40319441535AD2772895719EE27447BA07185A4B9B3BFBB8B6F2774715AF388431AC16F4F36BACBB0DFE1A5FCF122C89C95692495084A3AD81384718EB5217C989F2B447337EDBD0CB417AB40EA4A10A1224B0FC3FF2955DE5873F01531F33D900566EC0AFBAE1F20ADC0AF22B07557FBAB9E370BE972D9285CFFF833940AE1075AC64A4F0574E09678022F4F0CFB6B64DD2DF1D7C5EA1A6169C68110DADCD4B5D1ACB13CF7B84CB68CB3BD511EBC1D39F01038D1B383B1B7A260C008B126D8004B3A36202283A5D7A66E94F03071167EDA6ACF554B5713715CCFD583661BA8F56C51E0322E896B22DC416D61B8CBE8FC30D9188924E01126E3C2172B9B2EDAC3ED710207716472B1D491D0AF9EC42FBF2FBF764ACFEFE0A7721A6875C8E7F98A6F97D01728E17F62C2FF9230F9DA393F133B4FA51CA53824FC6CFA7F39DF03EDFD2D9A3E5402456E19B1FA9129C30BC84E5D40927A37103078B9632B764D777624CD67D31E807492D1C4D556E4B74683BB3B25A004779E418CF42F6A837114BCDC73656E5AA806FCED5ABB17470689620E57ACB72C3533B680EB309719287A6C31C4E4B9ABE08A44FF20E4AFD8195E9E82D770FA739C9D5F141715E737B945BE3DE9F04E6F5FC220B5DA88DD4927BC25C0B1CC423FB09A4BD2821ABD57BC70783902D0627C232090DB12C8099D5A9C1E141CA9C6D8C7014C65CA8009CEC21795805F05ED491B04E4B83480099672A3B5C8A12959065431349F0E0857501D1A2D29B5808541D732623F09D100EC10616C4AAB8A36F7C66253880F9401D74706B9220EFC9802821F53868F254A00964CE81C1F83A047A2FBA44681CED06D84DE824C4ECE4CA6E83715DA54D864E2632E1AD2C7BD3CCE21FEE968684B4847E3EB143EEBB0EF38CBB8B552D894764415C4825AB2BA4691401E523471403C64D6B4371514136C6A75A423764160E28F563635A4E4F723F60EFA9CB7BE3224F0D085EE2978BFB7F8005548A8327854885CA2BD7FA6F4AFD8DB1F5EB3D574319A4CE721E2E179B64C991314430E9EC94D435FA662EF09F9F4B3E0FBE06E8785CE39DA11AE0E9921ED475E2287F8854C6B52A02403451AC420876D440B8A16EFB7114F3C132A7812D015310134D08817A62120D0A2EECDB3E7273A1ADCE9B56A1795A7C8E391C484B28F32F29BABCA0B9AB1EFDDF045E782F47F54CFEFF82D1A67D4D3273A1E5997D4FD6141459942DE50B908F916334F0555A2DE870671F824D91700F527FD0DF4AAEB0A026FA3330C7D2496E266615ED6A83E4DB65C48EFE71686AF2BC87D7D05A7BEB4417D06F82734FF4207A4EF38B10AF1805387A66A4BDE11EE22B7A170E3B0BB5F4221A3466946DE5F81FF0A587DB8FF13A54ABBF8');
INSERT INTO "frozen" VALUES('dbc0d11b3e8f2f0f3516abc7d6e65e7980b8ac576ff2272e27e45d52808a7801','power',X'7B2270726573656E74223A7B22737570706C696573223A5B7B226964223A223930633632363530333333663466623262643433383833663565383362373339222C226E616D65223A22436C6F736574222C226275696C64696E67223A6E756C6C2C226C6576656C223A6E756C6C2C226C6576656C5F6D223A6E756C6C2C22706C616365223A6E756C6C2C22785F6D223A322E352C22795F6D223A6E756C6C2C22726973655F6D223A6E756C6C2C2270617274223A6E756C6C2C22757365223A226C616964222C2262617474657279223A6E756C6C2C22626174746572696573223A6E756C6C2C227374616E6462795F686F757273223A6E756C6C2C2274656D70657261747572655F63223A6E756C6C2C226E6F746573223A6E756C6C2C22636162696E6574223A6E756C6C7D5D2C226369726375697473223A5B7B226964223A223762393539393236343932303434343738343466663635316336306536633738222C22737570706C795F6964223A223930633632363530333333663466623262643433383833663565383362373339222C226E616D65223A2241222C2277697265223A6E756C6C2C2274656D70657261747572655F63223A6E756C6C2C2261745F6F6E6365223A6E756C6C2C226C696D697465725F61223A6E756C6C2C22616C61726D223A2264726F7073222C226E6F746573223A6E756C6C2C226C696D69746572223A6E756C6C7D5D2C2272756E73223A5B7B226964223A223131656331613531666431313435363139376331653961323038336337353638222C22636972637569745F6964223A223762393539393236343932303434343738343466663635316336306536633738222C2266726F6D5F6E6F6465223A224A31222C22746F5F6E6F6465223A223962636565353434613737373430326638643964303030373234643833633265222C226F70656E696E675F6964223A223962636565353434613737373430326638643964303030373234643833633265222C226C656E6774685F6D223A342E302C2277697265223A6E756C6C2C226761756765223A22313820415747222C22737472616E64696E67223A22736F6C6964222C22706172616C6C656C223A6E756C6C2C2265787472615F6F686D223A6E756C6C7D2C7B226964223A226634373837363262346437623434343761616564303564363638306430323862222C22636972637569745F6964223A223762393539393236343932303434343738343466663635316336306536633738222C2266726F6D5F6E6F6465223A22737570706C79222C22746F5F6E6F6465223A224A31222C226F70656E696E675F6964223A6E756C6C2C226C656E6774685F6D223A6E756C6C2C2277697265223A6E756C6C2C226761756765223A6E756C6C2C22737472616E64696E67223A6E756C6C2C22706172616C6C656C223A6E756C6C2C2265787472615F6F686D223A6E756C6C7D5D2C22726F75746573223A5B7B226F70656E696E675F6964223A223962636565353434613737373430326638643964303030373234643833633265222C22737570706C795F6964223A223930633632363530333333663466623262643433383833663565383362373339222C226C656E6774685F6D223A362E302C2270696E6E6564223A747275657D5D7D2C22737570706C696573223A7B223930633632363530333333663466623262643433383833663565383362373339223A2262303830313838316433383131336135326430653862363634636135353030313765346433373631376333363465623766336261393737646364643532313039227D7D');
INSERT INTO "frozen" VALUES('46bfbe8a4aeea1f90a6c3c12dd08f9361e5b861d7241cbd8e1428b263b4bc329','part',X'7B226E756D626572223A22432D31222C226B696E64223A226D6F72746973652D63796C696E646572222C226465736372697074696F6E223A22222C22737570706C696572223A22222C2266696E697368223A22222C22756E6974223A224541222C226C6973745F7072696365223A2231322E31222C2263757272656E6379223A22555344222C22737570657273656465645F6279223A22222C2261747472696275746573223A7B7D2C226B6974223A5B5B22532D31222C322E305D5D2C2273746F636B223A6E756C6C2C22707265666572726564223A6E756C6C7D');
INSERT INTO "frozen" VALUES('cc462d6aade99b6d850f37587cc23cfce2698a965c1428852d9fed81e2af6963','part',X'7B226E756D626572223A22552D31222C226B696E64223A22737572666163652D756E6974222C226465736372697074696F6E223A22222C22737570706C696572223A22222C2266696E697368223A22222C22756E6974223A224541222C226C6973745F7072696365223A6E756C6C2C2263757272656E6379223A22222C22737570657273656465645F6279223A22222C2261747472696275746573223A7B7D2C226B6974223A5B5D2C2273746F636B223A6E756C6C2C22707265666572726564223A6E756C6C7D');
INSERT INTO "frozen" VALUES('0a1fd385719f443d58ec8bd17a0b3bc46f3dec6df5569e134519208f16824cc1','catalogue',X'7B226B6579223A2237346534393836346333303266663930613137343137356438636532643934303930353463336430373130303330363532333233343263643135396338636639222C2272616E6B73223A2265336230633434323938666331633134396166626634633839393666623932343237616534316534363439623933346361343935393931623738353262383535222C227061727473223A7B22432D31223A2234366266626538613461656561316639306136633363313264643038663933363165356238363164373234316362643865313432386232363362346263333239222C22552D31223A2263633436326436616164653939623664383530663337353837636332336366636532363938613936356331343238383532643966656438316532616636393633227D2C226F776E223A7B7D7D');
INSERT INTO "frozen" VALUES('0de24f249716f02cd0dd5029ac5352fb7bc5e0f771ec39a8147922d1d4d6bd7f','project',X'7B226964223A223130623732363033333263373432376461346639346239333462393935623763222C227469746C65223A2253617665642079617264222C22626172655F756E6974223A226D6D222C2273657474696E6773223A7B226C656E6774685F7374796C65223A226D6D222C226C696D697473223A7B7D2C2272756C65735F6F6666223A5B5D2C22707265666572223A22636F7374222C2263757272656E6379223A22222C227261746573223A7B7D7D2C227465726D73223A7B2263757272656E6379223A22222C22646973636F756E7473223A7B7D2C227261746573223A7B7D2C226C61626F75725F7065725F686F7572223A6E756C6C2C22686F757273223A7B7D2C226C6561726E696E675F72617465223A2231227D2C226F776E5F6669656C6473223A5B7B22656E74697479223A226578697374696E675F6974656D222C226E616D65223A226B65795F67726F7570222C226C6162656C223A224B65792067726F7570222C226B696E64223A2263686F696365222C22756E6974223A22222C2263686F69636573223A5B224141222C224242225D7D5D2C226C6576656C73223A5B7B226275696C64696E67223A6E756C6C2C226C6576656C223A22726F6F66222C22736F7274223A312C226865696768745F6D223A6E756C6C7D2C7B226275696C64696E67223A224D696C6C222C226C6576656C223A2231222C22736F7274223A302C226865696768745F6D223A6E756C6C7D5D7D');
INSERT INTO "frozen" VALUES('e81021dea6b688c8d66078b35852e7c7a251448166ee4000a80125397af37cb3','rules',X'7801ED9D796F1B499AA7BF4A428BC1B8015125CA960F19FB877CB53DADAA326C57D702C6C0A0C494C43645AA7958A55EEC77DFE7F7BE11919149260F49358B056680A9B6C86446C47BDFF1F57FEF0CFA3B473B67BD69D9199F9F4FCB5967D6FB5E8E7676776683D9B0E4BB93F1D9F7420F14F64DD19B1667E5683629FB3CD41F4CCF06D7C3C1484F4EE7931FE52D9F4ECB1FE56430BBE5B3D17856F2C9696F3A986AA1F1D5D578545C4F7A67B3C1597954F4FCD5D3596FD49F16835131BB2C8BAB41BF3F2C8BF1B9FD352C7BE7C57C342CA753FBDB9729A6BDDB6931E6F1C9CD60AA35CEE613EDE2E7B2C71365713E195F15A73C509CF7CE4A7E3AB65FDB494ECBF3318F68ADD3F11FC5605A5CF7CEBE97FD97C50DFB2E8BFDE286F796C560A6EFC271F7586338B81ACC38C8D7FFE4ECE57939E1DFE7BDE1B4FC3FBB39286F06B3CBC1A8A39DF3A304491DE4727071597058161F00D872349EF301DBB1DD0C01F6BFB322E0E6876BA15B4E26E3090F46F03E7F0A68CBEBDEA4371B8C474745B7E8FEF44450B5538FAFCBD1607451B0AD1F00247C55F6CE2E8BE9A06FF0EEF193C7FE136DFEA56F0A881A20C6F34931BE117134606D28B2038D84251DCF56EC5DF4066C633C8AC8BC123C6F26E3D1450D9A5F776E7AC3E1B7ABAB9DDDFDBDE7BB3B27B6A23EE3B7456D87C299DE7D645B136A8BE96559CEF4BEE35F3E7FF8E9F39B0FC5F1C1A1DE531CEC1717BDF945B9F39F1BE16B3A1B40F219C212E93B420B7BC08EA713F3E4D618BA28C757E56C727B549C9690481F06F0970E07A0E462D8037CD0420F821C95C34548573BD80AC0ADC70780B30EA43AE98D005375F45FE657A7503740EECD80F788ED16B3C9FC4E54E94C53F4CBB3610FB1510898863DE764E85DBB982E1ED6C8A74628ADE7806BAFA69D1EA43FCB4EF1F68F010083E4EDEBC2BE76C1603465D283C7D762F1A63711E7F068E4B488C7C54D8B40CFC7E3D9F564309A81CC7317428B67F9BA33464C0E7BD746F74FF71E1FEEEEFCEA9F38D8611517B9920ED0898957A0351B0F4BF075560A3426E6AECAABF1E476172929C17B3E4036B753BC836ABC209E1AC082F174944D097D5B1069179CE57A280E96C0980EFEC53F24306A18772819888CA777DE8F6FA017003232AC1657BDDB6262E8BC96988A7BDE3545351C4F45C57A3F5F4E78FD705AF4C75AA1A18A5600ECFB08A1D7719DD1E94F0643F16514EA7FD39770872914D717F6C866EAB129C01B9B722167D25547B811330655097A580D9E92E4766DA5A3CF477C7A312E336EFAEBB83845BB1910AE5C39BE2C6C8F05DA19217451F05AFE01B1060DE1C7A9E1A195F36AD0194CA72623964247420D2D6BAAC41EDCC882580BA2B3DE5CDA0E29321E0E451C52FCE5C5044DB42B680D26BB814004C34BFE5331EDF1F4BBC4ED703CFEFE12D5C4E68149DCE69DA1309EF44BA9E5A550701AB1471E9046CA28E9644118AA2323441AD1DF128FEB28C3769628C30D933B928608B773369E8F72997CE2D64730EE02C501AC3B0861185AC4CF8EA7B224AF41B5EC0B2483CCCB1F2E57242746E1EF20CC82F572DCEF0BF967E3C9A43C4B9243A651B0435DE26EC60643045AE78C052618D21D6121238013BEC4AAD3B7520867B758CC9088E1497A7C93E337F9206AA0A3C0FD6E3B4867B8E93A1525877D34CD35B6636B3BB16C6CA4FDBFD157DA245424D536338E896C756CC7E3BC882FCE9D1E11D3DF8ACCD7925413A64BC56F9DB55CE21A942B3C9A0881EF6C2B18E0526A5091C83E80FE335ACABE35B6148FB2E3F0246E072F706213F6CC5EB687ED20F6EDD9E5185566DF8A898BD35B93641BD2A620D8E293682BC1BAB5ADDDD3AEAD4E1CFD30E91EFCCADD0A5A97253ED0CC0990E59628FD5665730509F63BB21D5828D2C12FE54DB023E0AD5E61CF986DB009092CDA2D0D22A84EF4A94454C8719363585E496BE20C16A3B43CAEB15C9D0A759BA187DF748C64B233FD6AEF31D31569E6C7DBE4384D8A8E5202CFB66E3CD89FC635358FBC3A6DC49F8EDB66CF6EE4DA4D2FB1FAE5D861DF7ED6BFA3633FBDC2C1430AA6B7BBEABEC131BE94DF37BB1917F638B030F8BCC41AC53F62D708F5208C04E2561B7817EBF1FC3CB3AF93F1E8FEA96C47B3A78AF17CA66D099F693BD2290F65749BDFD6C17297F11109F7B3FC4D5702D82FB857682DCE1D54635056F717629B789A2F8BDE707E35180DE657313E20D09FCE0743038CED3F331D4EB0988A4BACAD283484157B1AC31B332B189A0650D332F682CDF8E194D84C5FC1931C56EF717ACC9BEAE14FC98BD45B71204EC74370A625C30F6AF032DDC1979DA872817E169D6A724B83F571D2793BC7D4D2873F759F62186052FE732ED068C9F3C1643A1355F6FAC593432C2DAC4E1E9D5FDBB7BD535155F710870D29E382A3EC9B9B1DB4C217626D3C6A7E681061311224437E37678800E83E67D686B428362F22475FFC6370A14F1542B348488A537DDDC1B11F96DFD8DACEEEC1DEFE6EF29F9AEF132FE0E4C32F3A8A4EC7CEC3898437C555BADD6EE7E08930CC3B39A707E514E3C3E184D9FA831ED18D721222394FAAD584B5E12CEE3D5B4B1C27D7CF45C974F0C7ECB6734EA0891081A4B98CB7B3CB954CDEAA2C9C8EB28058C67AAFA021DC83A09CECB855FC6A3AC74877F860744423EA3E84D57DBAEF207DDACD2374EC40143A25A87839FDF7A23F3001D09BDC168F4E3E7CFEF2D3F1C9AFC77F2108171DFEA2420267A91191DB4257328823094121E7E290A880050F679574D4BDE2D8D88925C685C9E318EC2947046B2ECA7E8D65BFEEA4AD188ABB7B87CF9F21D6A358D50A76CE08D70AD14D1252CC186B38BD6F9198C42ADF525CF0F15E572BFDAE9820A15C2875589E239A968407F5433BD5DDC8E6AC77CADE669D8BC9E03AA398D7FEB18B047DE79C17E374F7A18E86D859406DD8912F6DD1B31EE8266037E1A3FE6D0D45ADDC70D6BBEA5CF5666797B5335DC9F4C4471E5E0F4A0231F60044E2C14564402637FFBC138AD5D85E7D2B356B1932B62D8DCA121927E164BF897ED4596F32217EBA21200813E0A589567350D8A7F66A027717B04D39BB294B05C1882E113E62CD4B57497F1E20C886F836408A76013E327E8EB80018BEA9DA79BFEE6023DD1A5B3E8E729EB8064EC392B762F620E2646301FAEA65AD86543B55051474CE87F3698DB4226EEC0B8FF94AD6FB01F106846F1213964A020F0F08D420008536EC0422A333124489923323A6A67E2374912BA38BD9253BACA1A24E5C4D41B8BFF7ECC5E35C120AAE22170B4F061313CD5A4140B86BF0FD2E0089D828AE07625529D5D97C329A7E3B2D6FC78A5C990EFFA28FC09BC5ED9C772469C92140B67ACEF02A8E11E31888655E8C2C62DC587545E0338204853CC91DAED711B7D1EF0D166BCD5366E5F0B30744AD07446BEB84F8964BE3B8638912333B0D464B3DF2D7EE512B6C843F1D4EF05D299904D7FA3A8AC5D7A9603D575C4FC6FF20B684559F899A2F265120CDB85B40557B701B802DFAAF6D4CDC3418A69770062A24EEC279F4BCBCE1331381D0A3B292A429F96436195C35E54D3A9C1B03077BCF2A5360090370C6391137CFEAC6F7B5EDB63D7F51CE27E34E0D5ED19F7A1BBE39975B75D91B2A94578250671382835AF49EB246B62A94AD18B38E783EF843727A7A36296F768B371F7E29BACF0F0E0F8A9F8AB7FCF3F1FE6359E8FF9CCB42B6A8A222962F8BC7C5D55586F25DBEC2D1544A874F15AB3C936ACAED3B7711FC4C8617FF204231B3F7BF97B7DFECCFBA2A50CA441BE66BCFF64A60B860B2BC8924537CDBE26E76F94EAAE88284CA14FBD404138F917CC816EBEE47C51357F3473221B8B0D6F6F8BFE8116935B72FE3A957E606CA6320E34B74D3985F1E91296EF96B329842BAFD9E24D010A09E24EF51387089F3333893271CC32E1516156C16FCCDA34CB508B3DE707C3137B19CA170349F19F29E0B9CBF4BCADFF448727BBC982F2D2D68EE91BD0EF1E13A4BFCF9F37302C2FE7477EFA99D5EBF78BA87DB06FF117626DCF8E1F3AFC5B3FDE72FEC6BFDF164FFF141F036B7CA253AF94F3B38BAA2850C21EF8C31F0D8FD1B629D548010F4735621FD8467B5251E16455D031347C5B48469A83C517E4BDC8F005374ED065A9736A6F6C082E342C4F5FC7408B220C8699E2D339B201CCB25225BAEBDD5D8EF4CE1272114A9626FAEC9C656C560B47BA58C08522383D6EFE5B0DFC11CAA68973FA6B3B21CB2FFA16A6AB6D1096BC21ABC2D172DEE9A6B7531CD16E7B0904E7688BF46C693D181ED21FB4E908ECFFD2947784F2D0B5415612A3307F6BF019E48DCC067065519F021C62E597733E8136208E113DBA1AB3B8BC814231C8AB114E1E620111578022803C97B3E4C96A4763091419E12418D98AC80A58A967BA23B0A9F9798B06DC15DC857CC71463A146739DF079B9894392C4C9406AF33866C75D8742EDEA363D528E7EB8E1D522ACD44996986132BEB810CA8F642D599B45EF62657AF8AFD28CC6EE6183FB935E3AB712465BF908F7D32DECA5982F139C16324F03991B815A66D852DA5EBA6B371EEEAAFC19AA16942A40B3A0FBFBC0F694774091ECA4ECB9E7814023D42D08438201208AB5E81A1B3F1F52D21A1061816583A475A0C15781C486847A485D8FB32F03F342205AF53117F32AC05352AE1FA6E4F37CE722F942E96B52C4766104D0A91FDF9DCE67EA6DB24DB33D21571B8C1E8AE5C24E087402088374107D95A884C2831F3CB52C7C27A03132BF847F4D5399F8F9ABECDBBF05134F36345C9F7F25AD9D0FBF0495CCDB20056EAF7EAFDCFC7C571F7F0E9DE815932F6CFEEE326BB3498C320C2F65DBBEBAFB049E012D730F9475540CCF705390987C627CC9AE7B7AE526A2CD3AAFD0D6837658F3565FB44B7E5449BA9457AAA67EE03B00636DD4EBD42C14D38A957E3599DE812F8984F4C15843465F9075EE200E2C1E299E2C96E76D6ABDE8582A8A697B3B3BE1DE20EE33CD9B7985F26A76495BA77E2E2A837210EA91A5EB8543B78502EC556B0C543BE44E69559295AC425D429816925520834868D3420D4C3EDB3CC254039C55F534D93C936F4CE10ED86E5616C2EDAF2C54899543645FC885F2BE0A370BDD5AF69079B01D7425B13D56D06D04452FA845E36F42A2E6C9B08A52C0F00C206392DC0843CAFEAAFC0A46FCF78C8F00F2C894B598DB131DFC6E724273AF85E76CEAD92229ED14908DAF16FC1854844916D2C92F9ACA3A49B8B365434BBBC0F0B5512E67137133164C6629245312ED2382D6EECCB259EA06903C121EC3F524E260144473A902D69957959168B546D41813744762E2344C68E2C1F8E2E7E21AE5BB7C45AA591A2FE1D5055CB087C49A900FB06AB8A2AD6AC725E804DC6D63F7AF78DA6785421C63C568051F05AE76207355B8F67A54C494A72185D2E7E5CE3BCAF3B04817B17E515B153D3BC2FF60E0FB24497B6935E585CCDF16C0D5E7568E9952D84B14B99FD739EB6408A9CA56F56C56E6B915553A50445ED518BEA01B62D97D3AB2344F22989270A08F9760F77846A547FB4D7DC2811B1151BC3878E2B87FCB5E7BD57D8029E3FE878C4BA526B1EE64C478831E39862120875AE7B726877AF7BB80F2001E8012091E85182884FCE2E89165BD42AD257F1E8F8F3CF6F7FAA98FAF02FAD24B720DEEA6415778F26F5458DAA8299A02F2D9C93851B745432F7E6AD7AC2BF417006BE60E58564C247E500120079415A6D05028DA2FC6529B91A8DC7EEEECE9BF2C7C0B43E051F92D6AB68C15E55CBE91FBCD83BD04B429EFF4E7B4B2F6C6EEF60DBDDB58BB64BDA173A4A9C7482E11995C7177D53E81B28C434D20358A60DCD487CEDD5EBA2BB4F38F4A07874B07FD085CCEA1EDC918A33158A35F1207AF182650BCD3648CF482D724F701F66E9184677C952C5151EC9A64022DCF446E8881A9165F0522F47D5B36465F20BC18BDF544B9E6215B60D7BB0C9B1569B2549C9179B17D7B8397A666F145D97571EBA09059615103E5A8B8096B7E2763731B0998831F321FF1B63F1E95D986DB57337831107874443774E16A211698DC557CA9E4256B06CB00B5770E0BA93AD486D50B9D0D1299B76DD8751C75C36838099AC1EC8247B85F380A2082D3A18010F831D9CF0F19894059AC5F3A7246EDCB8781914844727650F5036463FCA909884AA3FF87F37563050A852154C657C8262733D2ABC06758D03655D5C3A9A11B317A0C7DFA597D5309A5172BDFD8E94DDACD347C69D856A6CD68BBCFFDB023DEB693C213DFD306073D467AFDD86B2D1B71E953B2DD5C72008F8DE004B88A28BF8CCB417DC27D86A35A834E9BC6B19B94DE8BCBEE385155A8C183FADEF71D941DB09DD2C570BBB6D2075EC61DEBF2CD6B6A1ECB9438CCD6C6F1CFE4888DAC00DB1B915B1B79F853F3D6F6C9A55FDA9C906110F7793486B449811D74EF612DB1E300FFCA2E757E237D4446D82E055F1B795D89D4FE7B076D78C55D213D752F918CF7296437CC0D013AC0E0F53792FDBBB2497BD0021C0D261718DF68DE1F9705C93020819375B0163C84FAE90B4BBA1897585714A6CEB5F407F0D99A97BC3EB8A86E3F90F72550F230E2A6157270D15598A4EBC6743BC2CC6167DD70B0CEEC6D0A087E328CEEB87A9F4565AA105E52BE0A850FC1A207A4A5A0FFED9E0F36091567A08FEE88D6EBD911C2C2CE41BB687D4B087FC5E032A7BC609EEC74015170F04B197C52FEF3E1E17CFF79538B85675C761F1282CA6140A8C7B31381D960B06691BA54EE5FB7BFD0421090E162D0D395A0F02FCF05AA8D52181A91CD694F5892747A9A71633793C9FAE71585A0D83A16612ACC18AE49A7CECC49014002A2F548B206DA8711A3E411B7C15AC4A4A86B54DCBB0EA4AD03ED97BF6F4E0C98BEAFFD61BB3F168809986CD5395C420E53C50266FC8C1DAD8B4821456F4AE3CA905BC543FA39AB4A920E345E574E52E54950B887AAB7A6D6F2C60BC3D1B993740DF17EF9A7654F10E08EB969C7DE5F6F819FD565E17FF27A3CB4E86E4D6864C6D7B23AD84B93ECA1C7EB3017CFBECB181CFA6EBBB8F531D8BA8D3BB62495F34FEF485DE0A8D60880059BDB481B21512DC014A822CE6E36BD044F1EAFD168F8F0F3C28DD0773DF33EB006B3E452D2B2E6E805AB47C0CBAB5DE88060C6D97DFD667C722D82A473166C106231C1733CBEE0249B9E28B11F8DFE464F8570E502CA587A6C9E839851CAE0110C65E052CD99239AC36341D250E6F3D5B98A494272936A73B8B557830C682090B7C8CFD676DB1442A5358E3A141F6B11E44D01416500FD0425E22F89EA152D430576DA64178F5CA863B09E3FABB1BB04C62770533AB546F8D36D3230F0DC69A199B7C99584C105D992C0C1A4B0AB3EAB67B834FEFF4C6995DAAB8A697A1E607645ECF87E611DF01A06222D53977CC266FD268CACDC46F1F4034129D26E645B14D3FF801A773BAC9AC444D694FC55E4CB958CF73BD60CB38BE9637F29698538A44781D7FD83E4D849ABD62046DBFBA531E2E0167345E80CF2B5FD35E6E912934C90342094CAC38BBD5DDFA894D7B6D9C59B413A10B3D08DC44775086E9CB07C076758E8628AAAD65E55F2A074EBA03656F913F1355E81BAF22555B544D2AB5DABD7650A3818E4DEAC88EFA4E53775222530FB298934B7CF4410F1E3B8AAD624B9145066E60036C718EAA2EA266BB24EE140D54CF3CC0E63DC2B559CD8471408889346B26324E14675BE661B3739F92AE633A537F30978B188FFD694CFDB959E4B2D9F08EC09C9E5C7023691D33CB398BCBAB5D9357C549466AB62C66832BE21F025F34366396060B6D5A58B5CD970FC79DC3A7D42477DE90C7528184ED40BFEFD8E80D5BAB0E31DF786CD1A878E0932A916D3D11B755F4687199D04AA6F36A4AD48625E6879A4DFB26D8234B7871851CA75E41BF46BD62F5EB8E2FE989D4ACEA50D021622A38560E97BBB02DBEC951F1A4F8A338D83BA4587F8526A6306F444DCB182F85D466EEA57C1CCE2FDCC79F5A905E11707BA046984B30D4ACDF15688C06D5236A53B42C83A7DCBC01E5AC17EAC82B000713D168D24C432BE381EE103737972A42F53D5938D2317FCD7637A349119C570E58A02C12E589BC744B83075AD2EA6C69DBE336B4B7EA1D5EE8A85AD6F3AA72F5AA2950796EC403060B70B09F8A297308E8C08E13B92156F214D26BA16252BF723784210F243630306446D680842FCC2FEB45AEA1D2D1CA0252A3AA3CC7D09C659C6A743DE57D46C08D33AFA03789FE4ECAFD2F08F5DF09F29091B6A982260E795C2EBF8DEDBB27262AB046519E5680C6CA9112702ADB8AAD930ADB706A31B048E125C4611575626FA73920ACCC503A4E0DB4AD3A8D727E33D5841FF614E94F47CF65628C2F2F2BA9DE80EB1A28390A561A8A4BE536C13473F11432720455ACA3C618531465E97BEAA148D4C450D6106B85A60F6A7CF3F1306E1334E0157D130159803252B40A82F8494A8E29D3A610B24989CD80A8FED70E91798F3D46181EABB39FC49D5279FEA58B5D041878423E93996AB2B4496D3ECC744C5382C5FC8B254FAE4DF8FB0C81DDE2670A909440BCE5FDEF219553264BE00175094E95FD815AE7B0F2F78AEE4157F8EC1E1C5454E842CEAB2982E112F12F7ADBCDA2317620D14B56D0A458078B7A06750BA0E1F4C7084904DB2BE0E5A2DEDFA6603ED418E4737CBAC67E5B412D201C9888FDE51A34A8B30994A5C5C6028211511073B1033074EBD740908DE4ACC50AA4C22603524291C97D1E8731B976B93CB6D2A26295BFF12AA8565ED79EE9DFA9CDDCFB5D30088E0C0162A324A7D97B91E616407EED7D13FA851BCC213AD2AB029106E899927D0E168480A61E2DD3203A9E192C35481BA6974099EA53CD4C6CC4635A20BC429198048392E1B9DCB43CC6F0B2D211B3C6A2D8AA3CD1BB13B1B74EB26F7B995A34306297B49B353CBEC0DFEAE18ADC2D4696CE8E9D0D217A530B80A587250A1AA46D1BF896598A07D66AF74E1BEAF9F6100C3D66EA451D62A5426C5D4236C42EF5CE96231C1507CFF5CBC7B21D77BD119C1F53B7291AE818C1FA32C501556B633D2E23532354345FF29B0EE626AC87D74FAC27DD73AFF684851865035B45801FB07533AA90D322FBFB7195D38197353EDE7FE2F376D5F29E484ADA892772F9994CCCE2C21AEBACCAC84810A5177D0541042BE0163BE01AD9DD3B3204E95566733FDD2D98C9DBF55AFDAEF8FEA5FE9290844D28856C150292950BD1AEF77216AAFAA4292965A646BB148EEDA17727D62D84C11A35D4A0BDE5CCBE44ACEAD026567185FC6CD0A4C200D5209D1524B88168ADA0AA1EA818B3892AAD01DEB51972BD4D7264232BA0822E18F26EB0F53AAD55D137205C0F30B615C1F45CBE19D33433E62BE0BA11952E1901E9E094292CE155916D8084AC60CF9FCB2AF9AF52636B2817116B52371672541B6C403CD1B4577E9C5865DD4A920EB80C2698151C41DA2E5DA1A31508C01D4C5219500A708A21ACC58BB285B5F191BFA11730A3F8583157C4982810899A2B997B21A2D544AB45D1BDAC5B64200E4A31759BBE640D22EE81B668C106229AD9B057F43DE3295FA929524B4817E6E5EAD68EEF9C001C89AB87EEC0E158B1C05029DE3847E8CF337E35980A706C8F12D7F5425CA8EA449E07BA51DAFC1CCD4A9BEA146D3B03C91D7060A693BDE97FC6F15745471321BCEC4680A62C02465B9CBCA5715B000ACADAC4D87E236DBD5889AA5356F65F48715ABC3E0C30AAFA2FD94A03875B3393F6AB155730CD0AEE20A42F78A899A8A9027E19BB8C4443C7AFB655A80BB4B37DCE4309868A78B163745EDB8F694713A7FAC85CFAE45BE3817961A9E1C1DB9036CC7DD46AA3DD9FA31E57165246B0AF59D773C749600041A1C198EC0E44BB002AE8C68AEF8C6955CECD9D0D8FE3F50CD85EA6E75CF8354CE67876DB8A01C09F8D94224BCF8539EDC57DE62A3469F07432E0246E81BED8DBA71FA5C9A07138562A490885C8D2705AC625FB4A92C4DA15BCF2B4B48F783F595A991D1630856D2B84D811ADC45A94AB3E6663AB076BB18357F04040B2382F77857ED7DFD12ACEB18B6CF49FFC59688E58EED336EB5D60DD6E28C5B1C105AC5BCF8AE555D40D7922D7A59AA3171A991CC4262789085BFB617471045B3FDD3AEC296E50BDB945F7A79CD506EF6C75002CCFC7087EEDB1590CF459B37794FEB003489659A04A91C16DA55515A60A04B6890E586B4461D8A827C3822ECE75761C0F05340B3E93F48FB3151D534B8C297F8948DF15F80A6CC919B042AE153CE020363901E4A25E0EC075F181D4105B53A1F790BE96F5C2F8613024824B8FB254A2A28AA8869EB64AB4C4CE87470DB9F99745DE0883AE7C8DE8B4DA7D1359736348A1D4AC2D8FED4483704920818268139259A2291A37EEACFB9A2691A28D198282E80FEBF66D6CFFAED30F6CA1251DC19F9D3B2CCC13E3915AFA5EDCD1D87313E2AD8E9A623669B44AAC16F9937903E926A50C13CA857D102659300602909562F4DC6EB4213D66AF1943F8367700792BA0354E8AB8403B65073B29C56D1A4A41C6F162C8314999608543F91AAE63B4653A0F7E5901412F0DB5B4AD9B0EB58970BCC7BE2A348F8A8321A613FB892215A2BA52D36B581018C2FE3E9F09E8AD5857E24D71A415D24D096A224863151C74ACC3086C4421F7ABEEEB1073C48E594F67AB354DE6404D8B30F21907666CD76E6D10EA30299086952336B96C85BE6F5D44936AB5695B0FC5DA4FED42345ECE10981E29E590C0003A1A6665F9446B72D35EED10E4CAD70551C380A43097E02C7B3969767591B38CCDE7E77F255DE3F668FC62D6BE90A24F83EB2F34F19C02D03582CA1477DD7A16D8E3F51B1DEB69AFA58C3FE43773B8C4F4D676C340F5FC5D50102AE16BD0B5FBE002385104B191BE5AEDE57A807EB67B985C39616D90511280E2212D53A769FBBA3F4E82502857C73C616035FF5A6452150E02BD51B83AE60276A2A6D17E3682AF01CBE8BA06D6E33020C0D8CA28C6C3A201A0215B580E17B4C086D4DD042DD3D1CD06877EA7BC35329A7D760DCFD9652CB638D0D02C416EA82A7AE7EA4FB8E2C227D2F21A08B501EC8D98056E3B14BF46E42612C6043481A5EFB914063BC59C110A589570D66A478E5DEC25BE41A09D2AE3AA59AFC6458A0F847F626443F3DC86B40D16ACF732CA147C6737784DF36035794E15635B131AC4C091F884A43B4A998487277BDD3D924776E043FE7D7814FB36C32E203F53836140462087B82DFE8408D126D70638DC460944EFF7E002ADD01F193C8E3438D5FCD22CAA61E3052D6280D3C4581533A58CE8353085896CECA9CFED64E82495A1F4AE19E229112358F47FD848B0D8304A50587CC30EC69038779B6D81078B66E0B9A9B93D13F2C7FE49D85F03FE471A6E33380FEDAABEFA863881C74B1E8DE5547594148F909F07FBDD177FA950139AC20FE8C1F9C7F8B463E4908DF768B48A33D69AB707D07F52E858E4EDA831F2E62FA9234FFD43D31225C6659E2772A4E8493ACEE9E5553A12D31A5CDF90580F05195EE62DC06D0B6759D11990DF9BF7D500AE05071567E5724994F4DD14EABDE1CA353A710BB0A0E6CF8197A77433E7A3D56AD036C72E06485C562F0BDF19995F60B7B87271F05B09882E1315190BFA01D23D12F81A7D598373E3E284D09EAEF1FBF89F1557A1C9E21800A14A9399CE880F78EB4E82CFC279F2B45A4D39BBF230B19CA1B0A63B1E44035BAD02C5248CAF3B421C35D481CABBFAD0B50D4655658C4D2FB0FCE2A3E65932DFEE6F3420992922D96E6EA93BD8AA076028199AD6F66EFAD67127E712E42070A29A0500A0A7868A364326C00AD16D5DCBE2C928E93FAB6D3346893C2EE9EBDC97D2A355F8C44A8FD4C56A94A4244998FC330A7A5E02C065B8AFBC8126FD545ED3D82FCD182DBC1B35C3C4D131A84F95B0705DDC919E0176881D84476F289579EB1B89838754C26E929BC7A478B781282AA893C015417A22C5B4882C697ABFA1F07EA0D5508EEE53E4AFCE22F5D3A4B32AC5D1EB8782FAA8ADC3062808D44D0496D9E6FE47D94D51F2BE2C7E3B61FAC7E3270624FE7DF0E2896E2B4ED62086A79EE70CF5189E57205A71A6CE2E7C8F18F0445E86E488E50DF1027463477827423FAE44DE875BFF8C79E274A62D9080116B41B59CAA4F70103B26315DD63464FA8608581CD99BE4D4E1DE1F8687C747C5E1DEE1DE33D021AFD3D73CC70B29458FB6F82A95F8CE1330F9E32E087C3E457C91E8176F5273DB44C91465981AC5F44265EA06CFE8FA7AFC27125FFC54428A60D08CAC0ED74D0EEDD2484B5A864170103EEA95EE210C77373B834C52F992E7C7709AB24D6E819D6BCD545BE491CF58D1767B10D5D136750DAF7234E54AEAB8F74CCAFD37E3FC398CC3ECBF920C39CC102517667FF8D0EC7D376E2B06BEA7A15F092E5FD8AC8C5C3AACE2948FF516B8F1B5A9622F4F8B864565B247F6A84A4C9738055B50F1B4EC0D3338FDB537D5D81A44D8F46A0C19EB6BDC8ED3097F8C36142ECD22D3205A4CECDABFBBFBF84117B6928469E6F047298E8AE316790AE243A94DD03916AA57C1F2DAE84A23951FE63AE83475505A616E3412ECB0D208CACDBB76F51B6C3464A70653AACB799505D348DC543DC284C804308BEA22BF08A865F77EE4F3528EC29C39BDB5194C5C6318FA78C20C67CDC18BF2E1026947789E6BA620DA942AF07B22519B5D6133FA42BD73159C4A0EBAF5A32A84CC6C00B4AB4C484FDC2097D39EC3CB5C573C80BD682CE33399A280F84DAEB5CA4C326ADC2202B042A15A0CA072388FDC8B0F4BD93427F921C035F0BD1B8D587F8F7F7A8211B44A746C6C2C7289F2BD8CC5AF3B11641E40F6DCF35FB1D398CF324B2712352743A269BCD5A2C04B1C1E852D16D5E96FAA8CC96847F2CF25EB7F9B9C7F82C9391F6994C782D5F99B7DBC3C4663C69B8574EE150DBE97DD497CD32E6588B6DC3DCDCAD8B641D20842B559DAB2C1835B10839D74FA61B6BA8F25F718C921EAD4DC49029D526059E0D36EA395DFE6A56D7A1263378B40348AA1DB1CDE684D7614C096308F02EC4B3433ED8BB8190688B9C7629F625387C0D05D5055CDE7F48066E2747B37A7D50D36FFF2DAD81BBB4B58E679DA4EAC02F704AF229D9EBCA8C5D89ABA3001DD948281B77E4EFC1F7DDA58381EDF17371723BACAB8331E6DB056277C0F8F6C34D47BBC9E96BB5A7677A8D6F30C547643B2DF53A15120844EB1EE8F622A7F2B8DEED32529BC230CD5B88DEA4DFC4C6709532897F68BF97750C28AB4D792C19733DAEEB8DC13BF5DADA86E510992D9C04BA54B74E7AF1570442006DB06B8E35959BCB3E20CBB7D1690DA7B34C36F3AB8D065A8E8B7ECD5386C68357D285BCBC7B1C9D84B4B5D97E36BB664F9A01A5EDA986242DBAD2E93D18CE98C250899A91F574DB18AEF314D6A710CE3E6D0DB8FE3EC830DDBDD2D9EED1103F220EDF8EC6CCE5D8D04141796DCC05C7D9DDD751F103091ED1B448ADE09EFCA32A8CC573C5F4A6431F63093AD93D0135EB63ECDAF8432C21D1DCC15D2D4718F8C90F8C230F5688D424C9B03D9F7C57DE564663220BFE60D2444EDDA16B9B609A03511933ECD88B4C5666240AB207B40BAE460EF71F188F9C12236DDE3453B06FF4C324DF6D9C2C4AC97853D4F9258AC8D27A39C2DB9261752BBC5BBF7C7C5C59C3C926E3A25FD62E98E3F068A2854849CF7517A8D8D1F30D076809F13B1D730C694A2B189D752280C5523DFAF3B9CC20CA8E754BF3FDFDDC9616776A7B44478B97E99535A8047C31CF41BBF2244ECDDCFBA008EFBA90C237A6B0362DBBC5850B4978602400135C625A1214BAA1A275B85B83492DE5E07315AF2823EC13AA45B7D9CB27E114147854D19B52DBBA7E088000FA4A00B7C2849B5D64469EB3BD05F1293DDBD177BCFED60362E587FBE30275F93A97D82F05ED7B560FCAB1A29AC7293C0B8531A9BC71A1E1677084572332D43F2DDCA6708F193506F90913D82A681E65AFEE3F5654918D6040EC939D2793D8AD2E1F5818A85F96192B971519F042A5A6767CA88788ACF9A052D336B350B60CFAE1DEE9102875F62BCD21258721F327F0C8906A70BE7D339D942667C297188E5889CFDC13878E6192ADCA6D01CFCDA1F8CC9DAC2703289C29E4426D9EC1987D3B7D058CA6D9AC045E3CBDE3A3A5D3BB98640EBF8D3F15512EE154CF562A1516F70552F5CF8E41B2050734A609E368D62BBC5104E722B9A596F740CC4BC7FF170A4D764F5A77BDD7C5EF51E15C64B47564319C452484691EB788574DB2D3ED0BBBB5B7CDA2D3E1BBE7FA3B77748A193F482A543ECE1E22D7412926DCF49B65D73B3E4F7A15A2E406C9FBBC2CD1C416BF3E60B1AEBA45683F9BB407EE9C7B65EFA31A1DC8C22EDBB80FC4D08F10BA688A4A1F85F7BB2A4B655DA28984060C84D8AA8C9A8EB7043D010A7C8AE62E40D2AB3EFBE211BBA8722AE13FAE9E4BDDAC75CFEB85FF02B5D3B525D46D79BCF28E5D2C575212B6E65A14B70E57356197AA4D7DB3DBFF1ED3609C9B482E76D8252687B078CC5D55CA39DDDA74F756D6772B1ED73F081064AEFC1E63C2C86A756AED8F6BEE1B8D7FFE606D5CEAE372D7E74F32A143FCAEAE226E24822662D29CB171929CAB716FA7305947E9EB370D79A3797B0707A9A8260D5DEB89A846BEFC1B0269D4E6F49DBD7AE3BFC9D61700AC385503C4415EC40231154D8268A6269403393D7870DB9024F22212D7CA54898A46E263C61B6B2074DBBB728FA469C68DB9EFB70C1621F08D3884C5D9926BB4779EC974543411A8320024967542BE28951A7A6910F8FF01711BE389E03EC986996A83D410FC828D70642AE25E5D4C555F6A559FE19A1E496B99C3B0FF2893FD3F53DB09E44F4FC14BF73366FBFF4A41601D211515E0DE411B4D72C7E19AE80080DA3FDDEDB8EAF8DFF9717B4A880094F2B053940160814AD0E9265B4445E4CBC29956E082292B85C0AEA9B00032172338D7DF546472AAF37D8EA580669173C3990E9F5858203F9DAC805CB296950B1C8EA342A6B766B9E81DFA060996888C65ECADB1B7D246D4ACF6EC10C329AC3449597EE8F346084FE70ED39D4D4FE7F8498105AB68B270D312B30E2A7ABA99036C0815B6ED46A38F0BF8270FF30875B22F2FB98A7F802C91A68A1E0BDEE7E432ADD168FA29F10ACCF2A7A91C985CF4A7E3858EC003FECB29DCCD81A7A0A6552AA10D5A58495EA584907162415D0517F64169E34B634AF14EF17F9622144A73D246D2E872EE3A97FCE51CF58964D5514CEDE6EBD29DDDB7615B14B915A59E8263A60D1594DCE824651B5DB667E7137001D15B4FB3B6F1BAB26B309B314E95EB3E17E36EEFEBC4432E176A4026589C4ABDE4883E0BD7C95D7786C5C00E0B56BD364CE0F731AB428B939931CC78552848748BCA6E480A7F06AA308317DACE231545154C232FCCCF4B87D5D594C2AECC396728B856116A2958624FABAB3917D523BA43AEE3283B5411C2DA85861EA9BEFD089BA2F937B1FCD518B5F04ABD0F32893F29F73E2730BBD4CC95DC8C21C4DEB21A31BF329B9862659F0C786F7B78EB88C5CDC667FBF480FCF42E96C971912416F4004BA3BF9EA14F5221D51F6E7A1B27331E96635318FF7015AF415C1961B95BB852CD0E2974C34346ABB3C8C8A4C8977754415BDDA6AE88F910FEA341861A1BB0D92ACF860AD2DC44D06A7676B8DD8C04011844626C9B28C4EFB8BA65034C37D747EDD4BEF079412521F17ACE468626382A8E7D3DF1D3F8C21AB678B0BB4690DF80C31E5D39EB8BABD52B89FF505125763A0EC8BFBE98A67413A2D52CF21410E9482AA1511B33892367450DE7B89DD095B9BF0D2891495517033ECA91975ABC527627E24EA0CA342050BDC1FC4DF3AC3DA0DA5690894243142BA2445230049A641AE148B0A7BDBD9B5F000257EB6D3F9B5A2521E1F88088109BE87EA1F87A30445FC32620B006C8E2F28962B3275C1A4E2CCD7B550F3AFF6418C8D0D07E7EAD30780366D7D3618EA8AB0EAF7EC642D4A9B624357A471A9EAB33D2269077B07303E8A9952542240B22F90FB56BC0DC32B00449D35B2DB9F2488AABA36C2709744769855184AC7293DFF03F740C34671469842F3CC7BEC2915B4CB8ED12EB2821514901C9174EF1318D231F8D17AE5727C21C7C541457D96CF638C9BA43A00B565C6AD5E6CB0E1AD802C3A46C0B006C1984D5B4A1E6D3C66C1DB95316B4E69B5A99A54AF2B1854D8BB380DD207480D4E0734AB895533F9BE68191CBF3956113306D813E6F864416CD3C7714A94193B902D247D8D0E95CBF5621FE610D4A68C3BF06BFE5230BB19B96613C1DB680B5627E0DA4A08F6EAF52FB14CB9EC5E82D874BC69F7D6A8B501B1256E2DAE5A38AF09D5FFFAD8317D0BFF58C8A37D4C1F626585D8B51D08E2F34C468D15EF896831CAE37D24AE154AFB8551549C2A2EABFF42C3DEA01FAA50B91064304298AE35D41A45623E27DD3D3EBFB7E81C7B4D7D3B217293C94DAC30C7DDD3C74A66BEB7CC2C1B71EB4CE19F4805B2C565FCE16BCF57F5F5197AAD05DE5E4C24442FFE59C9810A05A2DF14DB693B5F6BFC15C17376D9F17C2B14165DD15F25E8C4A4AAC9256768A3FE25A5ECB2D4874324923033D3C2642CBB38501929BB3A900AAE2792F74F7C6096BC495C63E4979559296468B144D84EF7D8A493449E8DBE934B58274D3B47654E6357211695C7435926FBDBDC5649706AAB6A4B8913DBD17E42DC4019B11C80CB78F7992157F4E5B83DE872B52454C3079BFEBE4D169FCEA7646819D248CE6098DB3BAFF8C204A0DC0DC9634B2BD82335945A108F53AE14BE8D0A8230366670E5867B1B212661FA8E6093A93A0B38DBE33D4D43FB7BF1E675D89687AF99ECF083E09469452C616B93821C164CD7A49BF17ED1B1322D8D8ACDE2E2A87DE5C0E524792C074BCA82792AC3113909476D9BCEB9A77EDD9ED726F7A6683EAE8DCDDBAD3E5AFC68CA70683A6D488CA707D641BA698FE8E00E037618A83A84570C7476A6704FD03967496B19817B42C6A0A71DD46837A39F65A73A9B8C716FB87B066AC90B60FC64B13E063A0AC25EDA8F2D6E7BBEA574B464E278B457746837F2F0B7B063F08B9597C2909750F0491E5E1A6E90811CB9B60E173BEF23F3EE71A50609CBD2F4C7FFA6F3D871DD60422A84351805A5FC4CAA69A9321790DD48EC4438D642023508737F597A055469C9109BEDE25BC36CB690AB7ED300432DE652C78EB3353DA6789F9D037E1A85F667E377EDA457BCD6B764E89D003740CBA275F5CBDBD7C5B1C7B38B6707EEEFD3ACC03FF79E62723D3B5007DFEBD0B9FDA2F8227DC1849EEEA3636FF6E35FAF784207F342569D5285B1473B817EFD248456260ACD5BF5487DDF0D601AB77DFBD123BCE50C9EB236F68D28A479F2C25D16724E7FD7CB74A6D7977B45D82EBBAD6D3067F45ADC3CC01CDA3601B43075FA4D26999C61257A97CF9DB6BDB2974CBA3679BE490C0970B909AA00BD4F5236C3DED4B5D9D4D13BB299DDB2152C462EEE8802BF06D75631100F3D19EB12B048657F67FC223783EB062DAD9B25E16F707E10BE5B4B8091D2D63FFCB5D3E2D1DF0693B3CB4B22EF100FEE950B6DE02E4384452DBECFB87EFC49A7773E93D38B9925C5996E96D2B4ED296819FC908DD0FDE9903A8319EE42F1BA78F4013278BABF7FF09C2548AD608989857118E417113A3D30AA4543C69BB339559D7431E7C927A91E47238599EAE1F3D17D4BFA20C91373B3FCE14A18986C0E73D11C31E1469E00861A82BEEEF8D030CB347D3B23EF69DAED8BDD9EE2E9A7E0CBA505F4FB0611BD2C9E1D7276A48398C0B8B578BE5ECC8087E665BC9F1DEECA8D880224F7953E21B34D839E3571B922A526611372C02A967A890DC40BDBD6762574BA8F9F46D1F2E88D10D7DAB87AA27911B63775D75B40405714C82546570DB9ED7624ADBF71AB5E60842921CA5C117ED6DF512DF9332826050846177760032826CB20DA54A0AA5F19DCB175DC987F8B0BFA3A18BCC33EB697FD96E24CE1C0AAAEA8D47534791234E4F450972A16BC9AC3C3A3923BC830882764D317E83B8C5FF47734A831C0615F95553518842D45E5162F2BAC1F0CCD91CEB29EFC023FB0BF287F3EFBB126E5C55C0D69E80DF95131C9CB80F37F8FB2E40E3868109FD293A4966480993C8FF6695ADCADDEA5775378F40D51101AA3119416FFA9D403C492A4D50202D21294F5A868B583FC99A047E356C289833514C014B298481F8A1A116B989E860CA42771C6E0C5352CE775E21F3B628E639461E07759D137A8EB99C6169BD6E5BF6E07712675133ABC3640C06AE6AFA0F27906AE91F3F2ED5DDDE5F3AAD468AE3100ACEC53A6A40FECB64E2A5FEB13C65A8F1B05368162A90D012F3BF3A7F4A19D37D639C41AE90ACA773833FA6ECEC93816831EB8150B0B540E69343D45DFFF18135371801B7553F7202828542B896E8776C2726709C498B2447FEE15BF5BE7322B84ABE5BDFE21904C9B1ED76BE7232B84360EB328AF54557E6D43344782010E4D4A13677B674F88489D40B3F234F081625058D66D07698E9A6C69458ED42C776146986488799D3E8C4240CF6E8085059B2BF0D739860490AE6D9CB6FD21B252E7B81AD0A2911D604A5983A10290AB0031BB9FA6CA64890A6DF804FBAADB11DAAC366E92BE3AE01650E9999FD6D4D1BF631C0611E1BCC8D66C2D7FDCB67C4787AD26CE0D263EDC2415FB2AB4109A40AD41937508A254D9D4D47DBE711327553E7480A8F1C10D78BFDA3719F1B5B85E05E257EA3D8662752B9E4447BC1686D66425558D676110A15BC3DEA937C46E8BDDAB2A6B3328298C6CE6DAF962C4228512DAF055732230D8F1DA301433F2159E1A2809734DC19ECB3283E1E2F4B40DDC883B8D733C590506497C501E1A4A925F2106B06004D0AECD64F3A4B5410E049859B81C665B5CB7617E8F117DA262A342835639A43816D18508753DD712D3D1C8B435376F844C6DC7005D53805E1C4D1E3F2673AB47EE19FD90F40FA0647C8D428FFADBABBF50EED6BAD19FF424A0B0052ECDA05056C5EE518C4568B91998659553C42D862C0C34D1253410B6C6DA8C010CF9DA4F3C361E401BE1D74316A28D0EC1A98CF07F53BFA1E25541A10BAB6E38C2A8525F3CBB2D30B5B76591A3A6CD5089882F46CF4EBB526E066D8FD9D966F4770417ED2D0E0661A4F18C11BF6D7B3380847A3254DA3007CAEB520377A566EC8571DFFE500D1AE1059C64451821C1A3716F1A39AFE1F79EFA328A335BF1BB86C93CB54B3230CEFF4DEA0D3F191E314B9DE0897DD471E7B985A3324A33A892C0BB1CCCAFC20A3A53F0776BB7150A0006D5AA902F1C5DC50DDB01936C706EB29DF067D481015CC409172F17D80894F3A9C557CEF06FCF2CE720F5407095C430E722B64CF537A0643A863D10A3CB7D6EA6EB1019A606F4476F4899558A3D3C7FDA39087789A8B517D242AA1657C797191C57736CC5938EC46445843DAA6E34742E29E1A484DB352B482952064ACD17CE44A8D7AFC199694C982BC4D89E67535D7541624AAA65BF6A384C8237AC211F4003D7063341CD321D61327FF21DB9F0DB11E47A168ACB8B0B900D0871BC98BEB6B6D922ADC66364364E3DBDEC2C7A947F0F112DF66E8F38C936E5CF4664E298806F491C190D50A40717129CD6B2D84012269DB360F147131CBB86F834D7815285E24A52744341D858555F2DFCD610628906C4F4D5DB921473AED20D69041910753594AF051DCEEB12C0BD8EDC609E57480368218CCD108EABA0BD5E7C2D86A09BE034EA3121BD749597302270337E2369672E63E258B6A70E2DE450047B0C033E7F9AF1DC278D443218C6C399B3C27FF29F1A4EF454B5209E3EEFD6B15D8D0489E15B8E929CED0DC717F30D059B8E8F8AA0800064C7F8C72FF3AB5396D062DCFE69A10F03D39DE8554758A2318F82D4AE13B29170925315FD7DA4303B1C70D4B239206A608CB68D5DE2E9D79CA4546A2B111A18A8DE50017F0688D7A6BA605A1D22288D80B9EA3AD0F554B7E00792AF581AF955D2C80843723E107B1A2F5C09E3A0E5FC9251C38C0F97F4FD6FC67667B8C99D9663BF4285212AF588AB9C00FAD3F11F1B91C0122E5B7BE2B456F3D84686E14336B0D9E928A0980C4E29FEE9841B9033A47E0A059F9820E1A11434B35284E6111302B854ACAFD174A6DF339B68F1B8C6B6D52DB2D144B0C0B5384A966770D25F332C64489396E15D0F48B0C96C0A304FAB6F76F03835C12EEF8CA3B5B2C3BF0B13B2BCBE41FB94A3CA9AD9B335824EEBB79D7E0D71BBBBD158248689ECD071CB2F8BFFF1D4E760FBE502D816380B566265AC07C768C44A05BAC82DF1050B1CB319C8BEE338C46EFC2801FF867540A8441E90397AC69451B23E008134CC8DC5336971120B382F46344DA63059C045AF0ADB1A103904488C5BDEECE07AF3C2C93F5A12AC497C5B1F790D555407FEC0AC9C503AACFDF8C12EC7BA3E390401363CCC849CCBE269F4E93DD97BD3F8718D9313DB80151A32D9C466C7F0F9ED1D86574B464472FCEC53DDA3616521500DD47A68B4246615D9A932038F81B02AE6BC0FF83F77C347112F4DDDABB01859318C9FE77B4AB849CA934B0D51309BEAD124E30D6132978FA1C6312E419FE4860A899AF08DB1C9D6E0582EB913EEAAF3BD431E480644479DE1F2B048AACA9CCEED52D230D241D68E4457C88CD8EFE871D5DEE572902F76EDCEBDD5977E3DFA7A0345E959E5A216285C295A7D91EB980710590DA257F4DD776F238F114B0A65E0542818AF9C48DC9FDD3E9C1B372142ED7117D1D32C952CE4616A91878725CC4BCF3AD3B4304C1417402FDE8D8A66E3F170117A7C58A942B1D4C3C36EADACE7F2CE05D5657290DBDEA0BA60D5EA9211EBE86D24D748DDC74C9C95F9EDEF756B53ECF47639E7505B4CA7EB9C8054301707B6797F79A9CA9260DB0D868CDD541DA5D46FEE963939CA79F02742BEC20CEBFB9916E2A4E44A10A2F4247832A42A6D185DB7BBDB51BA230829FC074BE482F89D7F62D4AFDDE8B1ADA5CE1ADDE842D8EE8D0AD93437936CE94A244591EB9B5C424031D8686F72FE33F913B5C866C2174D847FE8362A8B475C4B20C68F212DD652904AB12F64BE82E3A4741731DE1F9F91E8C5A6E24D9901DD040833DB211AAE441958338BEA14BCB69D17E3D9A29808E8F9AC1E7A21F082871A3FC4A20823770FEB600AD2CB6020CDBA045848330F39794644C959CD1E0E350DBDD6E1F875BEB854A731B79FA8CCA74636FA3B4AE829A193FEDC38303CCF6E6B8CD102A6456D157E5F9C5A2531AA56D72EF86D7358D2BECC111F8D8097B87D3799F9047D3C7BFDE8F39B0FD4A8753B6F1AE52EB759C4A266DA78047F33EAF1127CF21B54C4E465C2AF69B8830EE81B71A1DF9B13C803890399F73558487A424C14D638B76764B3080F3D9C39D6476AE56601689362F68B490F8BC48B39201E59F6DF15AE448BA5E436AA8CC087A64C39EBE5DEC6F4BB9B00F6C858850F91C34EE783A1F00EA86F0CECD2FEAA285678B2F8F8E9D7FF78FBFA4BF1F3F1A7BF15F1518B954EA7DF1C32C597B7FFEBCB6610ADFC76923436EA3FB2E4EBE442DB379C9493C56EF64D61DAD0FB0D80566C65FD8366D9D8C53E2144E2FC2FD5322BAF09455E5189EA7690DA82E026051CA2B81059DA28EACD0E0E2ACDA9956C671FF1D47F03CC62DE4450092BE1C14D4FBE013519302D1E2121A2F737696B71B67B05B228B0390815A1B0A9F67D8EA8BB9B3D53513497F649FE76546CD6808CB4B0EDB37A3A825F4F2B8049CD233FDA144A9BD2C71B95CFC71A86533ADB286CD666684DFEAE6F82647582D98C00E2112460816176D28F81B9F9C6A64C44BEDC9202363D5B4464B6215BB68947B3E1F4521B422C663154A0C42AA1E6374BACB7FF433CBF4356709447283FCD293E34C11F23FEF1891A4637C8E4C7DFB34FAB11927343EF101264A6DEBF148E0E756A9CCBDACD425B80A80989C30F2A82FF59E16C1D7B32971EC58EE5E81AB7DF8F93F6AC2C57195A24958A6E7910BD64F7C022B6ADE9E85FE564AC02EA589713B56872D236239E08BF66A0E75DD4CCCCCD092993F8C8D6006C2A1F066885B48F1D5EE56C40CD6A421D54060F3E8190B8A4A702DC3B3988F22F73986D77CEF4CA2827FF1E8B9F452CA996AE5A7ADD6937108F71BBB1A60B6C139FFA0E62F3722CCAC92408825763E565069E8450FB3A2850AB9DD1EC4A271E60622DA3FAB55D05C312E9A4C10F580A3C634555DF881C23A2CD7DB764A5066A6D07DF29E574B985472442D5F8F6B1D9A11A86B020583760436DD07C9CC5843A36C93937234041E67989139E5BF6BCDB0D45BBA331B56358C380C5DAA39F31C9AE56C39C1B75EF7B884B2DA7ADAAA02AD569F06229B848BD4297FE4EB9202F63DB0E60E16599D43EF16AFAB40AE92F12B5B7B61D1E5B47904DA7A1B5C45F2189243D1034A932DF0A6705002B8C57617F55EEEE058C21C3184A31D24E835843E6F12342422A4AA6E75E54195B078A5577A686C2FEB42D36124ACD5D022ED4FA632868FA2E7D7B143F39A585CDD490D052C5FF2B43F32A08547D45910FD278409C28BDAF61F4B554F573B5746FF64D7670683BFAD5CB73F1AEC4AD0E169CC20C265B2F2D125F92EB6F4FE3B908A79FEC625916FE7DE87C4C88BC27C9B5F36A2B3156423ED405057472505D67A2CC6ED89D892C7D66C962C068B53F0017E686CA6A885F0B106A6086BDEBA922B60D850069A4AFB665B94840C0C14C06A84C8EF3CCEBD96CEB1A9C7D0BF1B908A7F6B12A7296E5A03B19E8A8552F85268D8D8773715206A4C02A30402CFAC34650C5422950999095E81226C26E02DCD6734B2BD01C258C2B35673E0359AD1321202EDA35EA44E0D175205C54A3B55A57E6760087F53D1936522034A084960819D572A68B2818F3F02A74A43AA2283D0C46F85F17809CA29B10D5165DF102AFBC6C9218D764786FCA7F494F06D9839BDA68E24F1AC52CBB5EB16E8A7F82ACB913C41BF22D1332DC0D4BD0872C073850AB3734867A242A41B889BE74666658D0514F5DCD356C51C20E7D6DB37455CE9D548A45B1AB0401F94F5485CC8C8CB6BD30B08618B98418DC4D050151303259DF1184101402F9D7605193085F772A10798D55ED599640A2D8992213433C3830A7D40EBF2CF64586D8E38A9CE86E978728910AEB702D04FDDB655EA0FC4ED366855AFF46F848D6F89D10EC2C151BEB18ADB9476FA9CACB1C5D8829FAA7E66A4D8247D4F1F23235B3BA278671899B253FF5D1D26AF06E161BF36266A290B533441734092559FEEED1A460934B10A225D6676B66AFA8C96BE85534DEC0A8D7B769F0DA0111FE9308AD5845BE782CFDBE0E8B5A3754AD723C083DB350038E723FF3B35B1DA1BF47DBAC3DE947D8A8A21640480DC55EBC25F05DE8F02D1E61F85B022A4B553056C52DB91787FB9D6E117A830F5E191C0F5E577C96CAAD12BC95B0524730F1023A2BC48622F6AA47387608279A8CF77F0543B0B263C095820EF1A6BA1AC232FD5287B462CB8C378D656342D2604632F768E7B37F154B3C15E358A750A2B48FF0A4934A0C1408DB894A8595EEECA00400E523A8F34A339E95A2612465F01528C6DDA3FE1629200A536BEC45A9D319FB58F0A6B28F8B47A76872EAFC3EBC7DFB96C119CC4DCD715341DFD9230AB970BE50E8B844A4117298D453E55F77EA742F8F1DC4A4E68996030B15D10792C087CB191D6FD7B1F24F8BCCCA66B7C2513F6764ACB080389802C93095D3804595DC60983A24E512B9EED55A110EC54F44D39F338A2A03872D725DCE69DF213C627313DFFE710DCDB11170F5D1BF41100C7B88794C287A0EB9B7054848D85FBD2CBA9602A94431EAA4DFA14AB80F6EBA8EB027B608FB29FBDFECA71A51A16900EFED3D2C23A6F5FDAACC5F9A4D9FC403AE7102FCED3E9B5D73916DEAF2AF3194A0D76AA2A9BF7654425428698B768D0063182D6B391A8DA4E41245A61998BDA2DE5281AF5D27378A7C89297DAB2C916708C2B748EA64337B2D24A70DAE70DCD3164795BEA044FDEF32C8139C2D70CD6B991ED22E43097173351792122B57190BCE9538BBFAD4D8932737890E34846548A748D2FBF432A244900B06BC751EFB6CC597CC85278B411820CC176646BD2231DC6C421C369F51A1245E0CAD585C2E46657410C811356DF104ECEDF988D4B8AB4F022EEA1BB42C899068A37E8543D79D3B475F33C957CF8F451B80BAD75A1DC7EF7F7E67F7C1139385A1CBBB91EBAACDBC3B79E0D6EE74E8755DAEC4261A6C0050D7C9FF06852CBE20B801A81602D18670B1BE739F853AB939C61D28D78F08E5457F0AA5210E4A31BACDD04D64972141B526D7778A7CFA47EB4ED6D46CA9495FB701D4A35A1CC186F6798EF5469EA486E278EA4F9657680A0D549CDD4196B79A9A472E4B200A4BC5D67B740D6D765ABBBA21CD5ACD78FF9384727459E4C028331BA1AC717E7EEB4313D9FAA6A301327C91653D17C0F2EEE3B17452A5E496DE005D4D1477695CC1A6068D46BC10C6C84CDD10B2A80D40CFE7E0A0C06830E06CD1FA8DEA46AA14C7D4EE03E1767A9EA8263623BFC8D106A8B441BA664039A04387580E67574FEB21BB6CB4EBA2639E4D0D6312689C9DBFFCA690C5799CF18621BFFD667138654DE4A4319B61ACA6596562B88A3A62425AA9127D93466D62A6A100D1AD2ECA8D4D4326433A7D2388AAC8030EEA8CCF3B741BE45122531129B7E38BE329E273D83D21292B64150FC11F0E93E79AF4BC715543AB0CD36674BEE0DA629F92016F3B605DF378A2B1E5901FAC582556AF04A73E2E027D7AC1764D5EDDFF30B6A81D2754CDD8691C9BE693D849A91B9444526B7B9682C381DEECD8373D3A3CB9D958B1BFDC9DFBDD3E87EBC2E70F7CB6FCF2B0739215F222EC7847940498636DA6FF85EE90D7317D9B107259F7795B0D89702E8A54F35A80702A7D8A829350E11F749A3D3C255A6AD34D279F53A1A3704779A800B58341AC5B106838D17CE4F3BA32B1164E65111B7499655DCDE1DCF0589B5A0826DD336C88E65653D97FFE5F307802C7');
INSERT INTO "frozen" VALUES('1f83aca7a8cdb3f5284d82555bc7579e5ce91030ef85a83309e3afa395c6baa7','revision',X'7B22666F726D6174223A312C226368616E67655F736574223A32342C22646179223A22323032362D30312D3032222C2273636F7065223A7B7D2C22656E67696E65223A2265346437383430306266646238363737643866666163306335623439336462613462316364626363646431383339656164343437633135396333663935303363222C2270726F6A656374223A2230646532346632343937313666303263643064643530323961633533353266623762633565306637373165633339613831343739323264316434643662643766222C22636174616C6F677565223A2230613166643338353731396634343364353865633862643137613062336263343666336465633664663535363965313334353139323038663136383234636331222C2272756C6573223A2265383130323164656136623638386338643636303738623335383532653763376132353134343831363665653430303061383031323533393761663337636233222C22706F776572223A2264626330643131623365386632663066333531366162633764366536356537393830623861633537366666323237326532376534356435323830386137383031222C22636F756E74223A322C2262697473223A302C226F70656E696E6773223A7B2230223A2239383830306636346361346535376163393932623863313135303466333461646132343865393865663934323663663861663831326163306238396130653362227D7D');
CREATE TABLE hardware_set (
	id TEXT NOT NULL, 
	version INTEGER DEFAULT 1 NOT NULL, 
	name TEXT NOT NULL, 
	notes TEXT, 
	CONSTRAINT pk_hardware_set PRIMARY KEY (id), 
	CONSTRAINT uq_hardware_set_name UNIQUE (name)
);
INSERT INTO "hardware_set" VALUES('a4f46f256b5147e3961f681a0b1e0fd6',1,'HS-1',NULL);
CREATE TABLE import_mapping (
	id TEXT NOT NULL, 
	version INTEGER DEFAULT 1 NOT NULL, 
	fingerprint TEXT NOT NULL, 
	name TEXT, 
	mapping TEXT DEFAULT '{}' NOT NULL, 
	CONSTRAINT pk_import_mapping PRIMARY KEY (id), 
	CONSTRAINT uq_import_mapping_fingerprint UNIQUE (fingerprint)
);
INSERT INTO "import_mapping" VALUES('2f27ad2b6b96465991f7d60192e506c0',1,'f','Doors','{"Mark":"opening.mark"}');
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
INSERT INTO "issued_packet" VALUES('382cca4581b0432f89974a18d687ee86',1,'9bcee544a777402f8d9d000724d83c2e','2026-01-02','keeper','case');
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
INSERT INTO "kit_content" VALUES('b671e0a241e540159ed3c52c97ab9da7',1,'ace34c25a72d4e00b83cae4ffc05d15f','S-1',2.0);
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
INSERT INTO "leaf" VALUES('14aabccd956d4222a1ef373df1ddb610',1,'9bcee544a777402f8d9d000724d83c2e',0,'active',NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL);
INSERT INTO "leaf" VALUES('b9e3aa06173c4320ab369e60fa5be8db',1,'9bcee544a777402f8d9d000724d83c2e',1,'inactive',NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL);
INSERT INTO "leaf" VALUES('fa89b65e5cae477083a0993c88589bef',1,'098e87da02a84efaab1b2a0bd81f95d6',0,'single',NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL);
INSERT INTO "leaf" VALUES('2b6b526e31b647678eb19c838658cb88',1,'8b5f5f104eb0456cae8fc7cb0f60fc06',0,'single',NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL);
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
INSERT INTO "level" VALUES('f5695f5b971747c58f95123d6441c0eb',2,'cc6093d20e1e48189184063b9ce05ff3','1',0,NULL,NULL,NULL,NULL,40,NULL,NULL,NULL,NULL);
INSERT INTO "level" VALUES('951ba3f6fa3d41bca247faca453295d5',1,NULL,'roof',1,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL);
CREATE TABLE lock_point (
	id TEXT NOT NULL, 
	version INTEGER DEFAULT 1 NOT NULL, 
	opening_id TEXT NOT NULL, 
	item_id TEXT, 
	CONSTRAINT pk_lock_point PRIMARY KEY (id), 
	CONSTRAINT fk_lock_point_opening_id FOREIGN KEY(opening_id) REFERENCES opening (id), 
	CONSTRAINT fk_lock_point_item_id FOREIGN KEY(item_id) REFERENCES existing_item (id) DEFERRABLE INITIALLY DEFERRED
);
INSERT INTO "lock_point" VALUES('9bcee544a777402f8d9d000724d83c2e',2,'9bcee544a777402f8d9d000724d83c2e','a7df647b190241839cd3baf3e39652e4');
INSERT INTO "lock_point" VALUES('098e87da02a84efaab1b2a0bd81f95d6',1,'098e87da02a84efaab1b2a0bd81f95d6',NULL);
INSERT INTO "lock_point" VALUES('8b5f5f104eb0456cae8fc7cb0f60fc06',1,'8b5f5f104eb0456cae8fc7cb0f60fc06',NULL);
CREATE TABLE office (
	id TEXT NOT NULL, 
	version INTEGER DEFAULT 1 NOT NULL, 
	name TEXT NOT NULL, 
	text TEXT NOT NULL, 
	files TEXT DEFAULT '{}' NOT NULL, 
	CONSTRAINT pk_office PRIMARY KEY (id), 
	CONSTRAINT uq_office_name UNIQUE (name)
);
INSERT INTO "office" VALUES('08f92437c9a04871ab0e5d0d2e85b4be',1,'office','format = 1
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
INSERT INTO "open_question" VALUES('d15f5fee5b6d48039b3818144f96d4b8',1,'fc43aed57aad43be94ab6385871dfef3','9bcee544a777402f8d9d000724d83c2e','blank','0012','hand',NULL,'{"before":"LH"}');
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
INSERT INTO "opening" VALUES('9bcee544a777402f8d9d000724d83c2e',6,'f5695f5b971747c58f95123d6441c0eb','a4f46f256b5147e3961f681a0b1e0fd6','0012',NULL,NULL,NULL,'LHR',NULL,1,NULL,'key',NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,2021,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,'{}',NULL);
INSERT INTO "opening" VALUES('098e87da02a84efaab1b2a0bd81f95d6',5,'951ba3f6fa3d41bca247faca453295d5',NULL,'9E4',NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,'{}',NULL);
INSERT INTO "opening" VALUES('8b5f5f104eb0456cae8fc7cb0f60fc06',2,'951ba3f6fa3d41bca247faca453295d5',NULL,'W7',NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,'{}','walled up');
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
INSERT INTO "opening_fit" VALUES('9bcee544a777402f8d9d000724d83c2e',1,'9bcee544a777402f8d9d000724d83c2e','case','9f737a60efd3e7749fca3581fe60d2792f2094640b394a4735876f394448155a','program','a5ca83876477bf081178c26357410b22',NULL);
INSERT INTO "opening_fit" VALUES('098e87da02a84efaab1b2a0bd81f95d6',1,'098e87da02a84efaab1b2a0bd81f95d6','c3958cb63914e37cbb2515bb228775eff6bbdf3376a40d5a68374065f72a2b88','4d1a5b681209a263fbb5d5c98b568915f236ffecd8d4f070f0326407c934a9cc','f8d4e373a6522ad5441992e4d143281a','84d8a6f668ce7b7e99626905490ca049',NULL);
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
INSERT INTO "own_field" VALUES('bb6678f7be0642009f3d3f7c67af704e',1,'existing_item','key_group','Key group','choice','','["AA","BB"]');
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
INSERT INTO "part" VALUES('ace34c25a72d4e00b83cae4ffc05d15f',1,'C-1','mortise-cylinder',NULL,NULL,NULL,'EA','12.1','USD',NULL,NULL,NULL,'{}','{}');
INSERT INTO "part" VALUES('ef777fe434fb461294dd41ddfed43728',1,'U-1','surface-unit',NULL,NULL,NULL,'EA',NULL,NULL,NULL,NULL,NULL,'{}','{}');
CREATE TABLE person (
	id TEXT NOT NULL, 
	version INTEGER DEFAULT 1 NOT NULL, 
	name TEXT NOT NULL, 
	role TEXT NOT NULL, 
	CONSTRAINT pk_person PRIMARY KEY (id), 
	CONSTRAINT uq_person_name UNIQUE (name)
);
INSERT INTO "person" VALUES('8505db7a547a420ba69465fce12fee5d',1,'keeper','specifier');
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
INSERT INTO "placed_unit" VALUES('4a70fa67e1a541d892cd6b14f9212c0b',1,'9bcee544a777402f8d9d000724d83c2e','9bcee544a777402f8d9d000724d83c2e','active','inside','above',20.0,1100.0);
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
INSERT INTO "project" VALUES('10b7260332c7427da4f94b934b995b7c',1,'Saved yard','2026-11-29T11:54:00+00:00','mm','mm','{"time_zone":"Etc/UTC"}');
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
INSERT INTO "revision" VALUES('9feec808c61949d6a4d81e9ac76af3e3',1,'A','2026-11-29T11:54:00+00:00','keeper','kept','{}','1f83aca7a8cdb3f5284d82555bc7579e5ce91030ef85a83309e3afa395c6baa7');
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
INSERT INTO "route" VALUES('22e3fdd5828c4de3b4074816bb92c35b',1,'9bcee544a777402f8d9d000724d83c2e','90c62650333f4fb2bd43883f5e83b739',6.0,1);
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
INSERT INTO "run" VALUES('f478762b4d7b4447aaed05d6680d028b',1,'7b95992649204447844ff651c60e6c78',NULL,'supply','J1',NULL,NULL,NULL,NULL,NULL,NULL);
INSERT INTO "run" VALUES('11ec1a51fd11456197c1e9a2083c7568',1,'7b95992649204447844ff651c60e6c78','9bcee544a777402f8d9d000724d83c2e','J1','9bcee544a777402f8d9d000724d83c2e',4.0,NULL,'18 AWG','solid',NULL,NULL);
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
INSERT INTO "set_line" VALUES('43fd89716a654fc391cd974060c00b07',1,'a4f46f256b5147e3961f681a0b1e0fd6','unit','U-1',1.0);
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
INSERT INTO "supply" VALUES('90c62650333f4fb2bd43883f5e83b739',1,NULL,'Closet',NULL,2.5,NULL,NULL,NULL,'laid',NULL,NULL,NULL,NULL,NULL,NULL);
CREATE TABLE table_digest (
	name TEXT NOT NULL, 
	digest TEXT NOT NULL, 
	rows INTEGER NOT NULL, 
	change_set INTEGER NOT NULL, 
	CONSTRAINT pk_table_digest PRIMARY KEY (name)
);
INSERT INTO "table_digest" VALUES('project','002099d743d739a3',1,0);
INSERT INTO "table_digest" VALUES('part','502ed6395656c878',2,1);
INSERT INTO "table_digest" VALUES('kit_content','f44d2db7ac93457c',1,1);
INSERT INTO "table_digest" VALUES('building','6ccfd1cd7bfefb5a',1,19);
INSERT INTO "table_digest" VALUES('level','0856f9a0a1b5c808',2,20);
INSERT INTO "table_digest" VALUES('opening','23b01870b1bf73f5',3,31);
INSERT INTO "table_digest" VALUES('leaf','5f18a45e8bcc1ae4',4,14);
INSERT INTO "table_digest" VALUES('lock_point','57904af9bfa2cf9f',3,14);
INSERT INTO "table_digest" VALUES('existing_item','c4f016eb32630da8',1,8);
INSERT INTO "table_digest" VALUES('chosen_part','78369be2cfd77f26',1,5);
INSERT INTO "table_digest" VALUES('placed_unit','1f9c8a049ad33cfb',1,6);
INSERT INTO "table_digest" VALUES('own_field','bd5b168d135641e0',1,7);
INSERT INTO "table_digest" VALUES('import_mapping','3e82111aaec08c89',1,9);
INSERT INTO "table_digest" VALUES('opening_fit','c9648beaeafc03d2',2,24);
INSERT INTO "table_digest" VALUES('supply','3e191ff34336df5c',1,11);
INSERT INTO "table_digest" VALUES('circuit','72463c3005608705',1,11);
INSERT INTO "table_digest" VALUES('run','24c91f7fb7265cd9',2,11);
INSERT INTO "table_digest" VALUES('route','0ea61d21740275b3',1,11);
INSERT INTO "table_digest" VALUES('hardware_set','3ff54e1ab9436d87',1,12);
INSERT INTO "table_digest" VALUES('set_line','51abc05db6377294',1,12);
INSERT INTO "table_digest" VALUES('waiver','6b47f304403c7702',1,12);
INSERT INTO "table_digest" VALUES('issued_packet','b6c04ba15d0d42c4',1,12);
INSERT INTO "table_digest" VALUES('assigned_part','00e937b79c88414b',1,13);
INSERT INTO "table_digest" VALUES('delivery','2558991e8dfacd3f',1,16);
INSERT INTO "table_digest" VALUES('open_question','2d4f36d622ca586e',1,16);
INSERT INTO "table_digest" VALUES('transmittal','4e7af654ff1edefb',1,17);
INSERT INTO "table_digest" VALUES('office','a44fa3ff1ff5aee0',1,18);
INSERT INTO "table_digest" VALUES('person','2da4d84bc8f89bd1',1,22);
INSERT INTO "table_digest" VALUES('attachment','729709196fec68bd',1,23);
INSERT INTO "table_digest" VALUES('revision','768b2e1073fe2f98',1,25);
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
INSERT INTO "transmittal" VALUES('6076f79ce0df401482e8cf6604e19972',1,1,'2026-01-02','keeper','Architect','for approval',NULL,'{"schedule.pdf":{"hash":"c7833160c63da29c02cf51b6bb898cf53137ae144cebfe2d8ecece1de0d67699","revision":"","size":14}}');
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
INSERT INTO "waiver" VALUES('098a2f0656ec4e30a1d16ea31f7fb888',1,'9bcee544a777402f8d9d000724d83c2e','hand-known','','opening','f','keeper','seen','2026-01-02',NULL);
CREATE INDEX ix_change_set_target ON change_set (target);
CREATE INDEX ix_change_set_who_number ON change_set (who, number);
CREATE INDEX ix_level_building_id ON level (building_id);
CREATE INDEX ix_change_target_target_change_set ON change_target (target, change_set);
CREATE INDEX ix_change_entry_opening_id_change_set ON change_entry (opening_id, change_set);
CREATE INDEX ix_change_entry_row_id_change_set ON change_entry (row_id, change_set);
CREATE INDEX ix_opening_set_id ON opening (set_id);
CREATE INDEX ix_opening_level_id ON opening (level_id);
CREATE INDEX ix_supply_level_id ON supply (level_id);
CREATE INDEX ix_leaf_opening_id ON leaf (opening_id);
CREATE INDEX ix_existing_item_opening_id ON existing_item (opening_id);
CREATE INDEX ix_open_question_opening_id ON open_question (opening_id);
CREATE INDEX ix_open_question_delivery_id ON open_question (delivery_id);
CREATE INDEX ix_waiver_opening_id ON waiver (opening_id);
CREATE INDEX ix_attachment_row_id ON attachment (row_id);
CREATE INDEX ix_attachment_opening_id ON attachment (opening_id);
CREATE INDEX ix_lock_point_item_id ON lock_point (item_id);
CREATE INDEX ix_lock_point_opening_id ON lock_point (opening_id);
CREATE INDEX ix_run_opening_id ON run (opening_id);
CREATE INDEX ix_run_circuit_id ON run (circuit_id);
CREATE INDEX ix_chosen_part_opening_id ON chosen_part (opening_id);
CREATE INDEX ix_placed_unit_opening_id ON placed_unit (opening_id);
CREATE INDEX ix_assigned_part_opening_id ON assigned_part (opening_id);
CREATE INDEX ix_assigned_part_lock_point_id ON assigned_part (lock_point_id);
CREATE INDEX ix_opening_fit_opening_id ON opening_fit (opening_id);
COMMIT;
