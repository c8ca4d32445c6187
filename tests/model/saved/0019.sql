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
INSERT INTO "assigned_part" VALUES('fdae3c0c43a64cf4abcf94d37498ff09',1,'bbd88ddf3d844fe7a241e7de009833c0','bbd88ddf3d844fe7a241e7de009833c0','cylinder','C-1',1,1.0,'by-hand','SN-1',NULL,'planned');
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
INSERT INTO "attachment" VALUES('ef6c85915486446488c3eb6e0a7936fc',1,'opening','bbd88ddf3d844fe7a241e7de009833c0','bbd88ddf3d844fe7a241e7de009833c0','508b7b1f113fdf173660d2b3dace45039a6d28f00ee27382c04c93af8213e4c9','inside.txt','Inside',NULL,0);
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
INSERT INTO "building" VALUES('5e76b57912f3478a965d33f7b3d4b2e1',2,'Mill',NULL,NULL,'B',NULL,NULL,0,NULL,NULL);
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
INSERT INTO "change_entry" VALUES(1,0,'part','2cb6612b6f54471cad41ee4f2842ce46',NULL,'insert',NULL,'{"currency":"USD","id":"2cb6612b6f54471cad41ee4f2842ce46","kind":"mortise-cylinder","list_price":"12.1","number":"C-1","unit":"EA","version":1}','test');
INSERT INTO "change_entry" VALUES(1,1,'part','7dcbca1a684f4be7b474866f4cbc2bfd',NULL,'insert',NULL,'{"id":"7dcbca1a684f4be7b474866f4cbc2bfd","kind":"surface-unit","number":"U-1","unit":"EA","version":1}','test');
INSERT INTO "change_entry" VALUES(1,2,'kit_content','86702a7b331b476a8be6b33381809d29',NULL,'insert',NULL,'{"id":"86702a7b331b476a8be6b33381809d29","number":"S-1","part_id":"2cb6612b6f54471cad41ee4f2842ce46","quantity":2.0,"version":1}','test');
INSERT INTO "change_entry" VALUES(2,0,'building','5e76b57912f3478a965d33f7b3d4b2e1',NULL,'insert',NULL,'{"id":"5e76b57912f3478a965d33f7b3d4b2e1","name":"Mill","version":1}',NULL);
INSERT INTO "change_entry" VALUES(2,1,'level','d614e9f9f25b4c36849d34e89edeef59',NULL,'insert',NULL,'{"building_id":"5e76b57912f3478a965d33f7b3d4b2e1","id":"d614e9f9f25b4c36849d34e89edeef59","name":"1","sort":0,"version":1}',NULL);
INSERT INTO "change_entry" VALUES(2,2,'opening','bbd88ddf3d844fe7a241e7de009833c0','bbd88ddf3d844fe7a241e7de009833c0','insert',NULL,'{"id":"bbd88ddf3d844fe7a241e7de009833c0","level_id":"d614e9f9f25b4c36849d34e89edeef59","mark":"0012","stair":true,"version":1}','added by keeper');
INSERT INTO "change_entry" VALUES(2,3,'leaf','98485e32c679482caecccbcf7c6c892e','bbd88ddf3d844fe7a241e7de009833c0','insert',NULL,'{"id":"98485e32c679482caecccbcf7c6c892e","opening_id":"bbd88ddf3d844fe7a241e7de009833c0","ordinal":0,"position":"active","version":1}','added by keeper');
INSERT INTO "change_entry" VALUES(2,4,'leaf','f996c0ac3bd54e04a13c031f4c7ed69e','bbd88ddf3d844fe7a241e7de009833c0','insert',NULL,'{"id":"f996c0ac3bd54e04a13c031f4c7ed69e","opening_id":"bbd88ddf3d844fe7a241e7de009833c0","ordinal":1,"position":"inactive","version":1}','added by keeper');
INSERT INTO "change_entry" VALUES(2,5,'lock_point','bbd88ddf3d844fe7a241e7de009833c0','bbd88ddf3d844fe7a241e7de009833c0','insert',NULL,'{"id":"bbd88ddf3d844fe7a241e7de009833c0","opening_id":"bbd88ddf3d844fe7a241e7de009833c0","version":1}',NULL);
INSERT INTO "change_entry" VALUES(3,0,'level','4ef90adb7713436fb56d049e0b891b79',NULL,'insert',NULL,'{"id":"4ef90adb7713436fb56d049e0b891b79","name":"roof","sort":1,"version":1}',NULL);
INSERT INTO "change_entry" VALUES(3,1,'opening','4541fd3dd4ed4b22b7ace5046bf8ceec','4541fd3dd4ed4b22b7ace5046bf8ceec','insert',NULL,'{"id":"4541fd3dd4ed4b22b7ace5046bf8ceec","level_id":"4ef90adb7713436fb56d049e0b891b79","mark":"9E4","version":1}','added by keeper');
INSERT INTO "change_entry" VALUES(3,2,'leaf','75b55f0e9b5446718cdfb25ac1451f33','4541fd3dd4ed4b22b7ace5046bf8ceec','insert',NULL,'{"id":"75b55f0e9b5446718cdfb25ac1451f33","opening_id":"4541fd3dd4ed4b22b7ace5046bf8ceec","ordinal":0,"position":"single","version":1}','added by keeper');
INSERT INTO "change_entry" VALUES(3,3,'lock_point','4541fd3dd4ed4b22b7ace5046bf8ceec','4541fd3dd4ed4b22b7ace5046bf8ceec','insert',NULL,'{"id":"4541fd3dd4ed4b22b7ace5046bf8ceec","opening_id":"4541fd3dd4ed4b22b7ace5046bf8ceec","version":1}',NULL);
INSERT INTO "change_entry" VALUES(4,0,'existing_item','ec8f83e6bb354275a445f99bfc638ed6','bbd88ddf3d844fe7a241e7de009833c0','insert',NULL,'{"backset_mm":69.85,"id":"ec8f83e6bb354275a445f99bfc638ed6","kind":"lock","opening_id":"bbd88ddf3d844fe7a241e7de009833c0","ordinal":0,"version":1}','added by keeper');
INSERT INTO "change_entry" VALUES(4,1,'lock_point','bbd88ddf3d844fe7a241e7de009833c0','bbd88ddf3d844fe7a241e7de009833c0','update','{"item_id":null}','{"item_id":"ec8f83e6bb354275a445f99bfc638ed6"}',NULL);
INSERT INTO "change_entry" VALUES(5,0,'chosen_part','092290a1ed38493085abb0f6ea0286b2','bbd88ddf3d844fe7a241e7de009833c0','insert',NULL,'{"id":"092290a1ed38493085abb0f6ea0286b2","lock_point_id":"bbd88ddf3d844fe7a241e7de009833c0","opening_id":"bbd88ddf3d844fe7a241e7de009833c0","part":"C-1","quantity":1.0,"role":"cylinder","version":1}',NULL);
INSERT INTO "change_entry" VALUES(6,0,'placed_unit','10f5a434feb0481f8f88418114443dc9','bbd88ddf3d844fe7a241e7de009833c0','insert',NULL,'{"face":"inside","id":"10f5a434feb0481f8f88418114443dc9","leaf":"active","lock_point_id":"bbd88ddf3d844fe7a241e7de009833c0","opening_id":"bbd88ddf3d844fe7a241e7de009833c0","pattern":"above","version":1,"x_mm":20.0,"y_mm":1100.0}',NULL);
INSERT INTO "change_entry" VALUES(7,0,'own_field','9acba2796d2145269f03c00d9d0226b9',NULL,'insert',NULL,'{"choices":["AA","BB"],"entity":"existing_item","id":"9acba2796d2145269f03c00d9d0226b9","kind":"choice","label":"Key group","name":"key_group","unit":"","version":1}',NULL);
INSERT INTO "change_entry" VALUES(8,0,'existing_item','ec8f83e6bb354275a445f99bfc638ed6','bbd88ddf3d844fe7a241e7de009833c0','update','{"extra":{}}','{"extra":{"key_group":"AA"}}','edited by keeper');
INSERT INTO "change_entry" VALUES(9,0,'import_mapping','530fd1f000c642db93f148de52a60d23',NULL,'insert',NULL,'{"fingerprint":"f","id":"530fd1f000c642db93f148de52a60d23","mapping":{"Mark":"opening.mark"},"name":"Doors","version":1}',NULL);
INSERT INTO "change_entry" VALUES(10,0,'opening_fit','bbd88ddf3d844fe7a241e7de009833c0','bbd88ddf3d844fe7a241e7de009833c0','insert',NULL,'{"engine":"program","facts_read":"a5ca83876477bf081178c26357410b22","fit_key":"9f737a60efd3e7749fca3581fe60d2792f2094640b394a4735876f394448155a","id":"bbd88ddf3d844fe7a241e7de009833c0","input_key":"case","opening_id":"bbd88ddf3d844fe7a241e7de009833c0","version":1}',NULL);
INSERT INTO "change_entry" VALUES(11,0,'supply','e935e7117b0342ad8f1557d37cfda2c3',NULL,'insert',NULL,'{"id":"e935e7117b0342ad8f1557d37cfda2c3","name":"Closet","use":"laid","version":1,"x_m":2.5}',NULL);
INSERT INTO "change_entry" VALUES(11,1,'circuit','ace647e342094d31a5805b6067a7bccb',NULL,'insert',NULL,'{"alarm":"drops","id":"ace647e342094d31a5805b6067a7bccb","name":"A","supply_id":"e935e7117b0342ad8f1557d37cfda2c3","version":1}',NULL);
INSERT INTO "change_entry" VALUES(11,2,'run','f30ddf51b7f742bdbb6980506357b496',NULL,'insert',NULL,'{"circuit_id":"ace647e342094d31a5805b6067a7bccb","from_node":"supply","id":"f30ddf51b7f742bdbb6980506357b496","to_node":"J1","version":1}',NULL);
INSERT INTO "change_entry" VALUES(11,3,'run','c3be24c3a65b4e0cb7cc146c07f3cde7','bbd88ddf3d844fe7a241e7de009833c0','insert',NULL,'{"circuit_id":"ace647e342094d31a5805b6067a7bccb","from_node":"J1","gauge":"18 AWG","id":"c3be24c3a65b4e0cb7cc146c07f3cde7","length_m":4.0,"opening_id":"bbd88ddf3d844fe7a241e7de009833c0","stranding":"solid","to_node":"bbd88ddf3d844fe7a241e7de009833c0","version":1}',NULL);
INSERT INTO "change_entry" VALUES(11,4,'route','412f5c706a864748ad0baacd1a216fdd','bbd88ddf3d844fe7a241e7de009833c0','insert',NULL,'{"id":"412f5c706a864748ad0baacd1a216fdd","length_m":6.0,"opening_id":"bbd88ddf3d844fe7a241e7de009833c0","pinned":true,"supply_id":"e935e7117b0342ad8f1557d37cfda2c3","version":1}',NULL);
INSERT INTO "change_entry" VALUES(12,0,'hardware_set','ba27b86ef0f34cdca72ffe657642e27c',NULL,'insert',NULL,'{"id":"ba27b86ef0f34cdca72ffe657642e27c","name":"HS-1","version":1}',NULL);
INSERT INTO "change_entry" VALUES(12,1,'set_line','42458699c0134424a7fd9546cdfb31c4',NULL,'insert',NULL,'{"id":"42458699c0134424a7fd9546cdfb31c4","part":"U-1","quantity":1.0,"role":"unit","set_id":"ba27b86ef0f34cdca72ffe657642e27c","version":1}',NULL);
INSERT INTO "change_entry" VALUES(12,2,'opening','bbd88ddf3d844fe7a241e7de009833c0','bbd88ddf3d844fe7a241e7de009833c0','update','{"set_id":null}','{"set_id":"ba27b86ef0f34cdca72ffe657642e27c"}',NULL);
INSERT INTO "change_entry" VALUES(12,3,'waiver','80aab909db5e4cf59100bbbf488fa2a9','bbd88ddf3d844fe7a241e7de009833c0','insert',NULL,'{"about":"","facts":"f","given_on":"2026-01-02","id":"80aab909db5e4cf59100bbbf488fa2a9","opening_id":"bbd88ddf3d844fe7a241e7de009833c0","person":"keeper","reason":"seen","rule":"hand-known","scope":"opening","version":1}',NULL);
INSERT INTO "change_entry" VALUES(12,4,'issued_packet','ea7826adcc6a454a95343ce937eff301','bbd88ddf3d844fe7a241e7de009833c0','insert',NULL,'{"at":"2026-01-02","by":"keeper","id":"ea7826adcc6a454a95343ce937eff301","opening_id":"bbd88ddf3d844fe7a241e7de009833c0","shown_key":"case","version":1}',NULL);
INSERT INTO "change_entry" VALUES(13,0,'assigned_part','fdae3c0c43a64cf4abcf94d37498ff09','bbd88ddf3d844fe7a241e7de009833c0','insert',NULL,'{"id":"fdae3c0c43a64cf4abcf94d37498ff09","lock_point_id":"bbd88ddf3d844fe7a241e7de009833c0","opening_id":"bbd88ddf3d844fe7a241e7de009833c0","part":"C-1","piece":1,"quantity":1.0,"role":"cylinder","serial":"SN-1","source":"by-hand","state":"planned","version":1}',NULL);
INSERT INTO "change_entry" VALUES(14,0,'opening','80dfd6ce70484407a472f03ede6f52f2','80dfd6ce70484407a472f03ede6f52f2','insert',NULL,'{"id":"80dfd6ce70484407a472f03ede6f52f2","level_id":"4ef90adb7713436fb56d049e0b891b79","mark":"W7","version":1}','added by keeper');
INSERT INTO "change_entry" VALUES(14,1,'leaf','9eec83e0161a4c238adf509004fb65bf','80dfd6ce70484407a472f03ede6f52f2','insert',NULL,'{"id":"9eec83e0161a4c238adf509004fb65bf","opening_id":"80dfd6ce70484407a472f03ede6f52f2","ordinal":0,"position":"single","version":1}','added by keeper');
INSERT INTO "change_entry" VALUES(14,2,'lock_point','80dfd6ce70484407a472f03ede6f52f2','80dfd6ce70484407a472f03ede6f52f2','insert',NULL,'{"id":"80dfd6ce70484407a472f03ede6f52f2","opening_id":"80dfd6ce70484407a472f03ede6f52f2","version":1}',NULL);
INSERT INTO "change_entry" VALUES(15,0,'opening','80dfd6ce70484407a472f03ede6f52f2','80dfd6ce70484407a472f03ede6f52f2','update','{"retired":null}','{"retired":"walled up"}',NULL);
INSERT INTO "change_entry" VALUES(16,0,'delivery','ffd264b3a45943b78bc8750f1ade74a8',NULL,'insert',NULL,'{"at":"2026-01-02","file":"doors.csv","id":"ffd264b3a45943b78bc8750f1ade74a8","key":"f","number":1,"person":"keeper","told":{"new":2},"version":1}',NULL);
INSERT INTO "change_entry" VALUES(16,1,'open_question','d6553157e58f45d4b3db0c289b8766eb','bbd88ddf3d844fe7a241e7de009833c0','insert',NULL,'{"content":{"before":"LH"},"delivery_id":"ffd264b3a45943b78bc8750f1ade74a8","fact":"hand","id":"d6553157e58f45d4b3db0c289b8766eb","kind":"blank","mark":"0012","opening_id":"bbd88ddf3d844fe7a241e7de009833c0","version":1}',NULL);
INSERT INTO "change_entry" VALUES(17,0,'transmittal','6431cb4fd13a4e8bb9f91f4588934e1b',NULL,'insert',NULL,'{"at":"2026-01-02","files":{"schedule.pdf":{"hash":"c7833160c63da29c02cf51b6bb898cf53137ae144cebfe2d8ecece1de0d67699","revision":"","size":14}},"id":"6431cb4fd13a4e8bb9f91f4588934e1b","number":1,"person":"keeper","purpose":"for approval","recipient":"Architect","version":1}',NULL);
INSERT INTO "change_entry" VALUES(18,0,'office','485c25a416354dd3962a6ca38ac5fe6e',NULL,'insert',NULL,'{"id":"485c25a416354dd3962a6ca38ac5fe6e","name":"office","text":"format = 1\npaper = \"a4\"\n","version":1}',NULL);
INSERT INTO "change_entry" VALUES(19,0,'building','5e76b57912f3478a965d33f7b3d4b2e1',NULL,'update','{"occupancy_group":null,"sprinkler":null}','{"occupancy_group":"B","sprinkler":false}','edited by keeper');
INSERT INTO "change_entry" VALUES(20,0,'level','d614e9f9f25b4c36849d34e89edeef59',NULL,'update','{"occupant_load":null}','{"occupant_load":40}','edited by keeper');
INSERT INTO "change_entry" VALUES(21,0,'opening','bbd88ddf3d844fe7a241e7de009833c0','bbd88ddf3d844fe7a241e7de009833c0','update','{"code_edition":null,"egress_toward":null}','{"code_edition":2021,"egress_toward":"key"}','edited by keeper');
INSERT INTO "change_entry" VALUES(22,0,'person','b11e01864ee84da3babf887561c82f97',NULL,'insert',NULL,'{"id":"b11e01864ee84da3babf887561c82f97","name":"keeper","role":"specifier","version":1}',NULL);
INSERT INTO "change_entry" VALUES(23,0,'attachment','ef6c85915486446488c3eb6e0a7936fc','bbd88ddf3d844fe7a241e7de009833c0','insert',NULL,'{"blob":"508b7b1f113fdf173660d2b3dace45039a6d28f00ee27382c04c93af8213e4c9","entity":"opening","id":"ef6c85915486446488c3eb6e0a7936fc","name":"inside.txt","opening_id":"bbd88ddf3d844fe7a241e7de009833c0","ordinal":0,"row_id":"bbd88ddf3d844fe7a241e7de009833c0","title":"Inside","version":1}','file inside.txt');
INSERT INTO "change_entry" VALUES(24,0,'opening_fit','4541fd3dd4ed4b22b7ace5046bf8ceec','4541fd3dd4ed4b22b7ace5046bf8ceec','insert',NULL,'{"engine":"5b5892c93cf9a52766d37aec3b8b262c","facts_read":"84d8a6f668ce7b7e99626905490ca049","fit_key":"4d1a5b681209a263fbb5d5c98b568915f236ffecd8d4f070f0326407c934a9cc","id":"4541fd3dd4ed4b22b7ace5046bf8ceec","input_key":"c3958cb63914e37cbb2515bb228775eff6bbdf3376a40d5a68374065f72a2b88","opening_id":"4541fd3dd4ed4b22b7ace5046bf8ceec","version":1}',NULL);
INSERT INTO "change_entry" VALUES(25,0,'revision','c033b347f85f4bf1bda3b88153c182e9',NULL,'insert',NULL,'{"at":"2026-11-29T10:54:07+00:00","id":"c033b347f85f4bf1bda3b88153c182e9","letter":"A","person":"keeper","purpose":"kept","root":"acba3b99265637ec1136734fe4b05f5fda0d2fc34e616825b8faf11542907cde","version":1}',NULL);
INSERT INTO "change_entry" VALUES(26,0,'opening','bbd88ddf3d844fe7a241e7de009833c0','bbd88ddf3d844fe7a241e7de009833c0','update','{"hand":null}','{"hand":"LHR"}','edited by keeper');
INSERT INTO "change_entry" VALUES(27,0,'opening','bbd88ddf3d844fe7a241e7de009833c0','bbd88ddf3d844fe7a241e7de009833c0','update','{"hand":"LHR"}','{"hand":"RH"}','edited by keeper');
INSERT INTO "change_entry" VALUES(28,0,'opening','bbd88ddf3d844fe7a241e7de009833c0','bbd88ddf3d844fe7a241e7de009833c0','update','{"hand":"RH"}','{"hand":"LHR"}',NULL);
INSERT INTO "change_entry" VALUES(29,0,'opening','4541fd3dd4ed4b22b7ace5046bf8ceec','4541fd3dd4ed4b22b7ace5046bf8ceec','update','{"hand":null}','{"hand":"LH"}','edited by keeper');
INSERT INTO "change_entry" VALUES(30,0,'opening','4541fd3dd4ed4b22b7ace5046bf8ceec','4541fd3dd4ed4b22b7ace5046bf8ceec','update','{"hand":"LH"}','{"hand":"RH"}','edited by keeper');
INSERT INTO "change_entry" VALUES(31,0,'opening','4541fd3dd4ed4b22b7ace5046bf8ceec','4541fd3dd4ed4b22b7ace5046bf8ceec','update','{"hand":"RH"}','{"hand":"LH"}',NULL);
INSERT INTO "change_entry" VALUES(31,1,'opening','4541fd3dd4ed4b22b7ace5046bf8ceec','4541fd3dd4ed4b22b7ace5046bf8ceec','update','{"hand":"LH"}','{"hand":null}',NULL);
CREATE TABLE change_reference (
	row_id TEXT NOT NULL, 
	change_set INTEGER NOT NULL, 
	CONSTRAINT pk_change_reference PRIMARY KEY (row_id, change_set), 
	CONSTRAINT fk_change_reference_change_set FOREIGN KEY(change_set) REFERENCES change_set (number)
);
INSERT INTO "change_reference" VALUES('2cb6612b6f54471cad41ee4f2842ce46',1);
INSERT INTO "change_reference" VALUES('5e76b57912f3478a965d33f7b3d4b2e1',2);
INSERT INTO "change_reference" VALUES('d614e9f9f25b4c36849d34e89edeef59',2);
INSERT INTO "change_reference" VALUES('4ef90adb7713436fb56d049e0b891b79',3);
INSERT INTO "change_reference" VALUES('ec8f83e6bb354275a445f99bfc638ed6',4);
INSERT INTO "change_reference" VALUES('bbd88ddf3d844fe7a241e7de009833c0',5);
INSERT INTO "change_reference" VALUES('bbd88ddf3d844fe7a241e7de009833c0',6);
INSERT INTO "change_reference" VALUES('bbd88ddf3d844fe7a241e7de009833c0',10);
INSERT INTO "change_reference" VALUES('ace647e342094d31a5805b6067a7bccb',11);
INSERT INTO "change_reference" VALUES('e935e7117b0342ad8f1557d37cfda2c3',11);
INSERT INTO "change_reference" VALUES('ba27b86ef0f34cdca72ffe657642e27c',12);
INSERT INTO "change_reference" VALUES('bbd88ddf3d844fe7a241e7de009833c0',13);
INSERT INTO "change_reference" VALUES('4ef90adb7713436fb56d049e0b891b79',14);
INSERT INTO "change_reference" VALUES('ffd264b3a45943b78bc8750f1ade74a8',16);
INSERT INTO "change_reference" VALUES('bbd88ddf3d844fe7a241e7de009833c0',23);
INSERT INTO "change_reference" VALUES('4541fd3dd4ed4b22b7ace5046bf8ceec',24);
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
INSERT INTO "change_set" VALUES(1,'2437d02611c44814950853d5d8ba877d',0,'2026-11-29T10:54:05.595+00:00','keeper','vm','ea8799a0d198456a9ebcc2b41cc035e0','import-catalogue','Catalogue','edit',NULL,3,'57bacbe9a331b8296e8e2d854a0a5c769eb2a6acafa77ad86c0a82ae457127e4','4b9a99889b749205433875fee5487969adcad24e7118f0b8b5e39482ff8be0ad');
INSERT INTO "change_set" VALUES(2,'6caa715093fc4796a3d225d96ebaa3ba',1,'2026-11-29T10:54:05.615+00:00','keeper','vm','ea8799a0d198456a9ebcc2b41cc035e0','add-opening','Add opening 0012','edit',NULL,6,'8f34f5bd828ab0f3f928f925a50fa718274b6bdd1b9932ff6d04ae2176fdc897','b269523a4fe0aa0c2d6e3169667625ad568f10f61148575cae858ec6f580cb40');
INSERT INTO "change_set" VALUES(3,'90c6753dffa34105aee9926c6b351c5a',2,'2026-11-29T10:54:05.652+00:00','keeper','vm','ea8799a0d198456a9ebcc2b41cc035e0','add-opening','Add opening 9E4','edit',NULL,4,'00d37ee858eb9c783c851041e7fdb8d2100d80d4841b77b9e97947de3f64cae0','2404160c6b864ca2f353e1491412666e226fafcbcd19aa746c34b0b767f8f2b3');
INSERT INTO "change_set" VALUES(4,'306d1302e7d44a2bbd143bd7d03ba59c',3,'2026-11-29T10:54:05.669+00:00','keeper','vm','ea8799a0d198456a9ebcc2b41cc035e0','add-item','Add existing item lock to 0012','edit',NULL,2,'a8776791e89114d19ad5e01704bdb544bdd560c310e96be958182516204af11f','85b84772557932b26e6b6cc7658bd8271ba5570893a6d01d91a41fb39f86cc14');
INSERT INTO "change_set" VALUES(5,'bd6fce3dbed743dd9025bdc9fd48a779',4,'2026-11-29T10:54:05.713+00:00','keeper','vm','ea8799a0d198456a9ebcc2b41cc035e0','choose-part','Choose C-1 as cylinder of 0012','edit',NULL,1,'5b24deb44290adf2ef3f9db0fcdd9c2ae466a56f3767c610521a503c73b999b5','50fc137449b9e112c5630d5cecaec29873ae140175c9a4480b846c0eb61d67eb');
INSERT INTO "change_set" VALUES(6,'d34fef0a0426462daef9de72c9dc42ad',5,'2026-11-29T10:54:05.728+00:00','keeper','vm','ea8799a0d198456a9ebcc2b41cc035e0','place-unit','Place the unit of 0012','edit',NULL,1,'e30bd9ff17b7b2bd7ef3fa43009aba4f815d6778ae0411720f1e9bbb544d245a','92135b2866a53cd43dce96c601a947137f669c36c739f6ce92c44f381ebd0ee8');
INSERT INTO "change_set" VALUES(7,'327f072c4cf2401f8139a13a080657b9',6,'2026-11-29T10:54:05.732+00:00','keeper','vm','ea8799a0d198456a9ebcc2b41cc035e0','define-field','Define field Key group','edit',NULL,1,'14768297e72c1f927eccaecf998756d5334eed283f49983d22635122ffa79ea1','8a16c202a496d4909538b864382e0b040370efad38e71144e6807f305ba9543f');
INSERT INTO "change_set" VALUES(8,'247618c354284e8c87ca2953ade6cb39',7,'2026-11-29T10:54:05.748+00:00','keeper','vm','ea8799a0d198456a9ebcc2b41cc035e0','set-own-value','Set Key group','edit',NULL,1,'b15b91dd523396c114b03b98292b8f08b82bb3b9782dc510e9d8343fca480886','b85ccd2a80bf5b90b9c7d6e7fac8fcfaa40d4357dc437f8128705c10e40c5617');
INSERT INTO "change_set" VALUES(9,'b57129d6e3bd4fafab7d19006e625f34',8,'2026-11-29T10:54:05.756+00:00','keeper','vm','ea8799a0d198456a9ebcc2b41cc035e0','import-survey','Mapping','edit',NULL,1,'0e2b01ed39ccd9d265cf5a99158c264429b51900219c5c1b8b368e306d073e61','1a940771e6adbd8bff72ed5ac551a1ec2956bb2e683aefac59024d8666a36bba');
INSERT INTO "change_set" VALUES(10,'cd805e0acaa240b78215f94c290ed24c',9,'2026-11-29T10:54:05.768+00:00','keeper','vm','ea8799a0d198456a9ebcc2b41cc035e0','fit','Fit','edit',NULL,1,'423737c6f7864f114814752c3e3c841817236bd8f9b7154477a4f64ea707b21d','886d172fa0c33bf42faea9f3f999b02932b88853966d7e17377ed3da9a4af3e8');
INSERT INTO "change_set" VALUES(11,'1a585dfbda704ee4ab20812289468fa2',10,'2026-11-29T10:54:05.771+00:00','keeper','vm','ea8799a0d198456a9ebcc2b41cc035e0','lay-supply','Power','edit',NULL,5,'72c12ff14d16be0d79efca048725717a4edeeb8d3f9253cef3aa446e8dea83bb','9ba25780397f45128605f84df7fd4118f67fb035bcd5e450fcc864ba44714b17');
INSERT INTO "change_set" VALUES(12,'6170154f0f13433a934c218c06a85e53',11,'2026-11-29T10:54:05.777+00:00','keeper','vm','ea8799a0d198456a9ebcc2b41cc035e0','make-set','Sets, waivers, packets','edit',NULL,5,'58b1277886ea7ee347333217ff240fd2ee086f9ee5aaea74639cc850daf6b13c','d2413114a433967b138403aa6459e18ee4038f43fa9c87f8672dfefea1dcf1e5');
INSERT INTO "change_set" VALUES(13,'b6a9b255d17b4af8ace48a9879a2fe8e',12,'2026-11-29T10:54:05.787+00:00','keeper','vm','ea8799a0d198456a9ebcc2b41cc035e0','record-piece','Pieces','edit',NULL,1,'64f273671262d0d92c5073fbf34c359de17e339e6038f0d9c8028078fc2af4e5','d000c884fb97da47d1248460481eeafc996df6944782f1b972ec3c303b26c34d');
INSERT INTO "change_set" VALUES(14,'84403ca9f49c4284894296f83c6e65f8',13,'2026-11-29T10:54:05.791+00:00','keeper','vm','ea8799a0d198456a9ebcc2b41cc035e0','add-opening','Add opening W7','edit',NULL,3,'b76fb241dee35fec866b21ae902b3ae7bc26055d5dcbf9cc39cd1e9fec8cc803','580fa96b901eaa9479bdbb41851341301dc1684f63e589a9794cb7ae2eded39e');
INSERT INTO "change_set" VALUES(15,'d525273cb39c4305a7f2bdff330f0888',14,'2026-11-29T10:54:05.797+00:00','keeper','vm','ea8799a0d198456a9ebcc2b41cc035e0','retire','Retire opening W7','edit',NULL,1,'714d0e940df68a98f23e597e8290444b126007bb95dbbc1cb0b28701f23c91fb','bf1884f776c2c5943a8bf2c6eb163ebca18132663eb8155d244f85c3f5fc7ae0');
INSERT INTO "change_set" VALUES(16,'b8f43bba4aec47bfbb63bd7defd7f538',15,'2026-11-29T10:54:05.800+00:00','keeper','vm','ea8799a0d198456a9ebcc2b41cc035e0','import-survey','Delivery','edit',NULL,2,'932573ada3c5828c19d7a45a7663b17c1a1f73acd6456d7584e080626cd0fcf8','7598e92d7a9996b38adbc6ceaa508afe96276f889d5f702bbb56083c3565705a');
INSERT INTO "change_set" VALUES(17,'669d0d15238143c196dd205aca085485',16,'2026-11-29T10:54:05.807+00:00','keeper','vm','ea8799a0d198456a9ebcc2b41cc035e0','transmit','Transmittal','edit',NULL,1,'8ad8b35fc8290009524708170dcc0af25580bcb95b65b49be95a4e7df674e691','097857d2283adb6b0bf56de9013e6e471f424d3475597848058965fd8149a121');
INSERT INTO "change_set" VALUES(18,'8f42e31e91804e7f9e84315176813f6d',17,'2026-11-29T10:54:05.810+00:00','keeper','vm','ea8799a0d198456a9ebcc2b41cc035e0','set-office','Office','edit',NULL,1,'46a59695e43a4b201cff70b2fd64b6f5c77564d488e5411e73750297e5f391fc','cdda3fadd3ccd01969a758808d48864f873c045ea075c977bf56e5a84777e877');
INSERT INTO "change_set" VALUES(19,'fe68b8e5321f42fa95f15496b987cb77',18,'2026-11-29T10:54:05.820+00:00','keeper','vm','ea8799a0d198456a9ebcc2b41cc035e0','edit-facts','Edit occupancy group, sprinklered throughout of Mill','edit',NULL,1,'9c23997f25ab56cb6db16c91efef3909b4ece596ae43fb470975cb802a5c1503','53474f0ceccd286b54636eef1d4701c1e33db0a9109bfee802e7d43d39522949');
INSERT INTO "change_set" VALUES(20,'262f80a9989d430c97c548b1752d2916',19,'2026-11-29T10:54:05.826+00:00','keeper','vm','ea8799a0d198456a9ebcc2b41cc035e0','edit-facts','Edit occupant load of 1','edit',NULL,1,'622493c4a4b4114c043d9b0615604d1be0bcdf4e5c798fb5dab44c04c2bd64be','38d293409c92576464194325fe7e8a68cedc410774512aa58e285d6174593aa3');
INSERT INTO "change_set" VALUES(21,'1808ce3529044b11a4e2fe6925d08dc8',20,'2026-11-29T10:54:05.832+00:00','keeper','vm','ea8799a0d198456a9ebcc2b41cc035e0','edit-facts','Edit direction of egress, edition of the code of 0012','edit',NULL,1,'46d16200223fd530cd61e4281ff50c04fbd272864faba771418db42779c3e618','b221443a868d8aa2611de1bded176f380e42e9591278c05a09ee14b002397149');
INSERT INTO "change_set" VALUES(22,'73b4be7aff4b4370a5958da3fc205270',21,'2026-11-29T10:54:05.835+00:00','keeper','vm','ea8799a0d198456a9ebcc2b41cc035e0','add-person','List keeper as specifier','edit',NULL,1,'494aa629c7faa4bec7d08450a2bcdbb56282f9138a7d002ebc6c3f1f034add06','e41c4a7ba8dcaa2a4558c5ca53d4a4fe5e5563931211359a6fad3d10032c47e4');
INSERT INTO "change_set" VALUES(23,'805ffe57735843c4be2ae5a205addc08',22,'2026-11-29T10:54:05.843+00:00','keeper','vm','ea8799a0d198456a9ebcc2b41cc035e0','attach','Attach inside.txt to 0012','edit',NULL,1,'25ee4a4e6bfd2243c9e04cc9349d51e3961e8d9f1c2801649180dd60a65342ca','3c9bcfac17910797e7a255d61751be34fb4707d1f5b8e3a5d81c5eaf5b613551');
INSERT INTO "change_set" VALUES(24,'fa1325cc202345a7b56379cf6bc67397',23,'2026-11-29T10:54:05.875+00:00','keeper','vm','ea8799a0d198456a9ebcc2b41cc035e0','fit','Fit 1 openings','edit',NULL,1,'893531a3f7276d87183e662e22c60add1706e8bad3515d38190a7fb73a89cc78','24c3a8b4f2bcc4ce022920a6f2dcacfe23a0268168ecc639eca6cc2c4766ae99');
INSERT INTO "change_set" VALUES(25,'ce9bcfd598c246859b2061f4790d450d',24,'2026-11-29T10:54:07.221+00:00','keeper','vm','ea8799a0d198456a9ebcc2b41cc035e0','freeze','Freeze revision A: 2 openings of the whole project','edit',NULL,1,'9f0e7a5b9b036f67b607090fd4dd2cea2bf83149d3d3f91bd28ca7cd461c9f20','5f359387e35a1c8ef43ad7443a65b767408edb70c0a1d2776e3ec592d38ea3e7');
INSERT INTO "change_set" VALUES(26,'ee8aad21af6e48858a0338a5efba48fc',25,'2026-11-29T10:54:07.239+00:00','keeper','vm','ea8799a0d198456a9ebcc2b41cc035e0','edit-facts','Edit hand of 0012','edit',NULL,1,'5d5bc18d13dac9c9d6bae492e5db39640490b43a1fcdd8990161aa9277138150','0de9b522b24f631286e58e4081e10a5c1a82b2ef7bd07dc8c5129fc7a5aa255f');
INSERT INTO "change_set" VALUES(27,'725f4afd3bc0495fb9313266801cf672',26,'2026-11-29T10:54:07.245+00:00','keeper','vm','ea8799a0d198456a9ebcc2b41cc035e0','edit-facts','Edit hand of 0012','edit',NULL,1,'7a718b4d428faa20beb0699122f5253bf851a0e794764715b2c16ab76ef29502','c5d01ada94756d58719ed040304b2dbde7be22acb6017117e989f2a4186cfa29');
INSERT INTO "change_set" VALUES(28,'ffbdacf73f104efa84daedac9ee5605c',27,'2026-11-29T10:54:07.299+00:00','keeper','vm','ea8799a0d198456a9ebcc2b41cc035e0','undo','Take back step 27: Edit hand of 0012','undo',27,1,'15a291351ab5209df48eaf9ca87ca1ac79873475bc63dea9607aa6cc15b6227c','9fc81f3827e5c2014fcef1a039c9086b7b54f8738898da9224e18574fcfd33ad');
INSERT INTO "change_set" VALUES(29,'4eaddd13fac64beb95692b60d998618d',28,'2026-11-29T10:54:07.307+00:00','keeper','vm','ea8799a0d198456a9ebcc2b41cc035e0','edit-facts','Edit hand of 9E4','edit',NULL,1,'ca04f02e0e3a4818de307ac4db55741fc2be643a93cf20b050b3521ebf0632dc','6517ef308b86d3eb4465f0bb6c2bf58bb28d4f42fff4c4a12b4b092c12643329');
INSERT INTO "change_set" VALUES(30,'e736f763bb894284b0aef6e57efdc4b3',29,'2026-11-29T10:54:07.316+00:00','keeper','vm','ea8799a0d198456a9ebcc2b41cc035e0','edit-facts','Edit hand of 9E4','edit',NULL,1,'7afcb39c872bdc304c86f6828a5f2549df18807fc7fb997407d73f9364cbdf84','e7bba77000639c1bba28de0fe42e555b7bf02be0687bee571204e4a519ca8783');
INSERT INTO "change_set" VALUES(31,'67dfa8ca4da049eab7b355b75c36cce3',30,'2026-11-29T10:54:07.369+00:00','keeper','vm','ea8799a0d198456a9ebcc2b41cc035e0','undo','Take back steps 29, 30: Edit hand of 9E4','undo',29,2,'593809191fe3097b28071814b3ad13e6769f1a38f5bd0d11cf78021a5f2a420f','8b9852b5f6763081546558a5a8debc53782d76d94d14c903dd1ccc1157dc04f6');
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
INSERT INTO "chosen_part" VALUES('092290a1ed38493085abb0f6ea0286b2',1,'bbd88ddf3d844fe7a241e7de009833c0','bbd88ddf3d844fe7a241e7de009833c0','cylinder','C-1',1.0);
CREATE TABLE circuit (
	id TEXT NOT NULL, 
	version INTEGER DEFAULT 1 NOT NULL, 
	supply_id TEXT NOT NULL, 
	name TEXT NOT NULL, 
	wire TEXT, 
	temperature_c FLOAT, 
	at_once INTEGER, 
	limiter_a FLOAT, 
	alarm TEXT, 
	notes TEXT, 
	CONSTRAINT pk_circuit PRIMARY KEY (id), 
	CONSTRAINT uq_circuit_supply_id_name UNIQUE (supply_id, name), 
	CONSTRAINT fk_circuit_supply_id FOREIGN KEY(supply_id) REFERENCES supply (id)
);
INSERT INTO "circuit" VALUES('ace647e342094d31a5805b6067a7bccb',1,'e935e7117b0342ad8f1557d37cfda2c3','A',NULL,NULL,NULL,NULL,'drops',NULL);
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
INSERT INTO "delivery" VALUES('ffd264b3a45943b78bc8750f1ade74a8',1,1,'doors.csv','f','2026-01-02','keeper','{"new":2}');
CREATE TABLE engine (
	"key" TEXT NOT NULL, 
	program TEXT NOT NULL, 
	parts TEXT NOT NULL, 
	CONSTRAINT pk_engine PRIMARY KEY ("key")
);
INSERT INTO "engine" VALUES('program','0.1.0','{"fitting":"code"}');
INSERT INTO "engine" VALUES('5b5892c93cf9a52766d37aec3b8b262c','0.1.0','{"attributes":"064026d099b79db6e7a87abbf8cc656b","calc":"f19ca26a95bca231c9e62913375b57a8","catalogue":"fde934a1621fe70e2f25a738af73a730","family":"f1370ffd80a399f8096e52df29b5d53c","fingerprint":"ec19441270b1cf62c9ac718a54c03509","fitting":"f68fc829c58a6746d27184ab969c0162","hwsched":"c4a96cdca046aeaecf37a157d67b6c01","keys":"b04933dda784a9520271656ded958775","outside":"acb860361b5b7f575d1c3e0dbde52f19","paths":"60e302995b63b5195fa21074b2edd36a","quantities":"ea4b20f11a4dfc29d6b5b2f8eb98f8d3","rules":"8a58e6dcae31c8c4af7444affe223fb1","survey":"7b075f7770c6db2e8c63e8b34deb4d4b","tables":"97e87a111f65c75ba1ebdef10f5b6fc5","telling":"de1898b954ba9f75a117331f7edbc452","values":"faa1e285402a7f724cdcf4d34f50cb8b"}');
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
INSERT INTO "existing_item" VALUES('ec8f83e6bb354275a445f99bfc638ed6',2,'bbd88ddf3d844fe7a241e7de009833c0',0,'lock',NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,69.85,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,'{"key_group":"AA"}');
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
INSERT INTO "frozen" VALUES('7a37701e7a5755a5fe7af4310aeaf5777697d709ad9f629da3edc67760360b3a','engine',X'7B2266696E6765727072696E74223A223731313230616661306164626631383665393533376465333532313131633836222C2270726F6772616D223A226877736368656420302E312E30227D');
INSERT INTO "frozen" VALUES('d01372fcd5f4a830e4bb59fc75d1e27a66be344e42c979825f007e2228ce8bb9','fit',X'7B22737461747573223A22746F2D6D656173757265222C227061727473223A5B5D2C22737461636B223A6E756C6C2C22706C6163656D656E74223A6E756C6C2C226361626C65223A6E756C6C2C22686F6C6573223A5B5D2C22706F776572223A226E6F6E65222C2262617474657279223A6E756C6C2C2272656675736564223A5B5D2C226E65656473223A5B7B2266616374223A226578697374696E675F6974656D2E6C6F636B5F666F726D222C226C6162656C223A226578697374696E67206974656D3A204C6F636B20666F726D222C22626C6F636B73223A227468652063686F696365206F662063796C696E646572206F72206C6F636B227D5D2C22636F7374223A2230222C2263757272656E6379223A22222C22636F73745F6E65656473223A5B5D2C226E6561726573745F6D697373223A6E756C6C2C2272756E6E6572735F7570223A5B5D7D');
INSERT INTO "frozen" VALUES('53902b2513ba374dd07587c60671ee33ee8e8b58e897eb859b4bbd0caef5de26','findings',X'7801C557696FDB4610FD2B037EB20149B00C1429E84FAE63A3E99104890B14080261B91C891B915C6297B4AC06F9EF79B33C4CC5F211D769014330877BCCBCF7E6E087CF916B728EE2685DDA4D394D78691D4F5367F23C9A44A9F1DA54B92965856FDC156F61F57CC5CED45BD836CA95A65CC158B0F76A25EBFE2AC3593195CCA9A79CD532A63FF04B1B93D6D9C9D892B15965F58EA9CE8C5E97386DC75AA81A77AAFC846CC572654C17C6313955E361060712E58DC7F5DA16852DA9724AD746734C75C6E14A52654A9B4CD5E46BFCEB09AB4C4D296B93325E308E93B54D09EBCAB2C7A1BA7112D2992DAA9CEBF67D8B433C0EE3870676A5F206CEC49FBF4C2295D8A686433D4101E228FE1009CAB3E0C6A228E078786ED11D19066C47B61E596CEAA09DB5A0461F27E0D75C711AC54B957BEE1F1789508FF59535A578137D99ECD791F1BE612C7C0E1D0DBC9F6A0D75982407FB40834792385F39BC82391F5BDFD7CA384AAD75A3A5BF4202F7CA46ABA636B6F4B4B4796E37B474B6200E174C4441C64DC8B1D259D05586E310E87D7AF94101EC93478FFB208F9E59356037A2BB0D6A6408D18D9E4370FF5E0DD6A5EC70ECB3AAE14D5B0EC0922B46F49E5F5716893A96C1A85EEC9496212976AC7D5A9C105F1B2F4506C5820B5432ABD7E1B67BD5238564D898CB16A93E4329EA8A8E3C57CAD50F959A413AFF6FB4FBA4D6937A4B6A42C84843DC1132327565A62B56030DFB6B530FE642589809A28B70C39364B934F5147D22D4F46F05995ADD145C064E1EE87497A00F4791F1681A3B4DAFF7F63ECD7CB2099A8FD7CE545268D02F2D30109D795AA1E27B4E2724AD768B3AB36CBCCAC9ABADC7919ECAA648422EDD5D7082E0C43BB552A614B1EEA30FE681B9DEE96781B8AD34D3CAE646CBD0B093F4D2A351A31035E2C5CB07707E6D139B6E29531E081869E2960AB50DA30049DF9E60B4A833D80DCAB1769C823F0C0B93AEE533F2CC0994609514DAFC9AABFADEF45D3380969595B32BA78A82D370567786ECA764DB4E1392C4989D708338D866F6A8179CFA75C8FB76892D3534635D30258DC953201053B6F13AC31DED6C419C82B7B7EFDEFC767E76497F9EBEFB9DFAA5D4E2BA6871A5CBF3BF2F1F41ED939224748129A641C0E66E5138348D117710B074FB3B47C1A18CDD74E4310BAF7E39A3F9D1FC68763C7B4107C747C7F3C3137A7DF1F654AC137A01FB7CF6D3EC673AE06B0D06A43BC700B371E8C7185B4119805DF286D19A3DE7AC6B40DA077028366DCB5421A1B4ADCC8303DE3E77E932437AE24F5195AB52F42B790B05E217466D314B62A40EAC8A327295707E53FCDB56E227817F95DA4A5C944D9DA5A9332BB335B47425677F6A9CF1A9C1288B69555A08D2894B948661C0ED1477970AFA5E3E647917D5AC7DF1246564AC44B6D325466C695D3BB97D47FD7CB43664301B35F29DAE3D3072819C64D480FEA3E07B3F32FA9D63F975515112DAB55D82CD4CB9149F384C213BF1A1844C857B5092F9078CF5A780CE96E683F72F5FD17C3E9FBEFC466CDB43C07477AD8E6FBE6AFEF3F0F775850E0AF87C4B366116BCF5A97063580A338B1E199CF0B82F9361C37708F2E3570D7017AF');
INSERT INTO "frozen" VALUES('a273ecc05dae5d23cf269c1616817814db2284edf3703acfe0c33a8b870c19ff','opening',X'7B226F70656E696E67223A7B226964223A223435343166643364643465643462323262376163653530343662663863656563222C226D61726B223A22394534222C226C6576656C223A22726F6F66227D2C226C6561766573223A5B7B226964223A223735623535663065396235343436373138636466623235616331343531663333222C22706F736974696F6E223A2273696E676C65227D5D2C226974656D73223A5B5D2C22706F696E7473223A5B7B22706F696E74223A7B226964223A223435343166643364643465643462323262376163653530343662663863656563222C226974656D5F6964223A6E756C6C2C226E756D626572223A312C226E616D65223A22222C226F7468657273223A5B5D7D2C22666974223A2264303133373266636435663461383330653462623539666337356431653237613636626533343465343263393739383235663030376532323238636538626239227D5D2C2266696E64696E6773223A2235333930326232353133626133373464643037353837633630363731656533336565386538623538653839376562383539623462626430636165663564653236227D');
INSERT INTO "frozen" VALUES('7255729aae286381c5ccc4f1c81773c372284dba25cd2a03191454743d58f129','findings',X'7801CD584D6FDB4610FD2B039D5A40126C1F7AA04E8191A23582A668D35310082B72282EB4DC257649314290FFDE37CB0F518EAC3AB603F7605B9AFD9A7DEFCDEC8C3F7E99F9C6F02C99E5BA5EB8063FF9225335CFE6B34C875457465B19CE5CDA946CEB8081C07BF6BA3EC0DC2A6FB5DDC25872086A2B53FF7084CD28750DA627848FAD0AD43ABFE38C70046D0EA42CB1F246B327EC15B4B3E472AA0BA6CABBAD57E51C533218742067994A75A0801F8729BED581973872A3820E38307565890D2AAFD25AA7E27ADA78F1E46F666A0B5553A6F31CC7F49BAA1DC3AB848A36A485F854B15C227AFDE75FEFEFDEDE7EA0C522689BF2A2A9E04DC62B6A755DC0EAD9B00A58A44C70D89C3D93A24AA53BC63D0190DC509CDB2BD330BCFBF2753E531B18E10FCC963983F5E3A739B0D37BCE66498EAD78F8BADE08AC9858396DE39AAFF391A3EE9817A2E98380DDF90DE86FAE6E7E595C5D2FAE6EE8A71D73C5FE6712EC4D068AEA027C0939391006A5C1950C6A00590166538C6E814804EC51BCFC1E42C31DDB9D036AABB49DB02367E1E848FD065328F7AE8C0B82AE23F73F02DE9D75AD5D6C38779E1799D7C680879328088DDFF301D6FF08817F6CDC2BA1483741327942EFF01B32CAEA6235B514ACB7457D6202B6E9CE22A04EAC25C2D26B6556836013FA55437E5ED5A06245FC5907F9046D7399D0ED01A12BEC417D7B50679CF317D84922BCE2698CBC1836A146104A004A10679CEA4CE249242F043516D6AD83C8C780BB756565B8EEC63BB092E95D5FFFF6E77433503DC4E64C5058465FD76589DBC5EF1D4F13C3C8D2C4367084457D565976F4C030F0B3167E96694FCFFAB8EF9372C28968B504168E7A09D1F6FE27F4264D2145BD31901AF21872E138F476EB3104B3995A7F836A2E2A2D554D8D941F2877C6B8B68B6E8E7BCD09A2D37E4E9E555A442922BD64B8539FD3CF4A6C74E8C9BE9ED3C580E6A88B8152352232E1B9F37F62887E3F9F53E711C42FCDE9FBE1C973BE9CF2F9B97208DB299927294602A14F64A3FA1FC85183DAFB6CF4CE4916C76917852169655C6864495705704C22430A925995F2B11679942A5EF7B6E7A43590FA8DB404A28986B82764621AF349CC4A230DE793D00066977304D1753CE149B24CB54F1B948931E5DC5764E5DA28D347BF8C8EE2120A4D559983141B69E1025B5109DD1A7C8C75D403455E82AA6BEF4C8D92138F114A3CA931ADC3DF639D892DC5828A52EAAC6F3208EA9878F452B424B23C4754E7080647A6268B66AF0FA3C48261BB4571DA17D0BE0184522EF5C0D68EEEAE05DEA62B4A2E06E00B808AF3979D47EB18ECE750BDBB9E223A5DF13F8034963E5757D7379479D5860974B1999192D7762D4E145ED7E7FC685487A7079DD543529D423A99FE3C44C7E0392929BE37D8513442A89EA4713C90712A43B325A5A5AEC318C62833FB0C436F44CC8FC80191AAA3B4852ACFE90E1D231AB47AA868431D9F91DE503A7CEF9853B5326E8B56445E99AE5C455F878A04ED9EE4146CA7D198CA032CDB6DD07D8A6DC4E4DEE3739250563495F5F8C62E2F1038DE7ECAE434DDCCD1AC1F830BB39E4D73EC41FDA2B192DE62923CE1F981AE1F5955AACC7B2DBFCDA4F988793222DFED2D4C4A25D4BD1A40FA4025FAAB95B41492B3B76882ADFC4BA0EB3AA5D938F6A24094D95E882D78D193F041BA7AC986FDB1D2363E1429477F26487F472EFFF42F2FA3EFDE');
INSERT INTO "frozen" VALUES('bbc9eaf1b2f3343b0d62fd97151dead13700f8575e2f5266a165d8c3588993ab','opening',X'7B226F70656E696E67223A7B226964223A226262643838646466336438343466653761323431653764653030393833336330222C226D61726B223A2230303132222C226275696C64696E67223A224D696C6C222C226C6576656C223A2231222C227374616972223A747275652C226567726573735F746F77617264223A226B6579222C22636F64655F65646974696F6E223A323032312C226F63637570616E63795F67726F7570223A2242222C226F63637570616E745F6C6F6164223A34302C22737072696E6B6C6572223A66616C73657D2C226C6561766573223A5B7B226964223A223938343835653332633637393438326361656363636263663763366338393265222C22706F736974696F6E223A22616374697665227D2C7B226964223A226639393663306163336264353465303461313363303331663463376564363965222C22706F736974696F6E223A22696E616374697665227D5D2C226974656D73223A5B7B226964223A226563386638336536626233353432373561343435663939626663363338656436222C226B696E64223A226C6F636B222C226261636B7365745F6D6D223A36392E38357D5D2C22706F696E7473223A5B7B2263686F73656E223A5B7B22726F6C65223A2263796C696E646572222C2270617274223A22432D31222C227175616E74697479223A312E302C22736F75726365223A2262792D68616E64227D2C7B22726F6C65223A22756E6974222C2270617274223A22552D31222C227175616E74697479223A312E302C22736F75726365223A22736574227D5D2C22706C61636564223A7B226C656166223A22616374697665222C2266616365223A22696E73696465222C227061747465726E223A2261626F7665222C22785F6D6D223A32302E302C22795F6D6D223A313130302E307D2C22737570706C795F6C696E6B223A7B2270617274223A6E756C6C7D2C22706F696E74223A7B226964223A226262643838646466336438343466653761323431653764653030393833336330222C226974656D5F6964223A226563386638336536626233353432373561343435663939626663363338656436222C226E756D626572223A312C226E616D65223A22222C226F7468657273223A5B5D7D7D5D2C2266696E64696E6773223A2237323535373239616165323836333831633563636334663163383137373363333732323834646261323563643261303331393134353437343364353866313239222C227365745F6E616D65223A2248532D31222C226F776E223A5B7B22656E74697479223A226578697374696E675F6974656D222C22726F775F6964223A226563386638336536626233353432373561343435663939626663363338656436222C226E616D65223A226B65795F67726F7570222C2276616C7565223A224141227D5D7D');
INSERT INTO "frozen" VALUES('3b0f7093f8d33d4316b1d789ef2ad40e8afac8c7e0431574597ef211e63a766a','chunk',X'7B223435343166643364643465643462323262376163653530343662663863656563223A5B22394534222C2261323733656363303564616535643233636632363963313631363831373831346462323238346564663337303361636665306333336138623837306331396666225D2C226262643838646466336438343466653761323431653764653030393833336330223A5B2230303132222C2262626339656166316232663333343362306436326664393731353164656164313337303066383537356532663532363661313635643863333538383939336162225D7D');
INSERT INTO "frozen" VALUES('af71e99f4852438108a21787d51ae7d15f5c3e364f525cacc874b50f59454ec8','supply',X'7801ED584D6FDC3610FD2B844E2DA02CF6D3EBAC4F465014488B5C9AA28720585014D7624D912A49EDC630FCDFFB8694B4721C7B9D1631DAA2C01E442D391CCEBC797CA3DBCC49DFEA906D6E33DF368DBEA12755669B4CBE5EACE47A365B17D3C572CECBF3DD6CB55A978BB5D8957C2E16599E195E4BCC7CA3AD9701E3A255BA54E62ADB9856EB3CD3722FF5BDC1B6EE878DE6028BD3C44FF47E3E59E5D9CD7186535E1E470D77F0324D6F3D6DAB39FCC4A63C04E9E077FA2F0D95F4FD0B1FB8298B9B6D655B37BC0CB26EA4E3A175722BFA99C6867ED95D9E09E544AB02967CB8ED074370E0FBD9722D1198E9EB65B998F1D5F974559C4DCFD67C5D0851C0AF14CEED57C6F2122B0FCA0D91F9A2A33C6CAD39464FAB5A21045BDE1F846BEE10D0AC74B6F13078FF60FFE7F95E9E3D7021E4768FDC22EBA5DC2B4128F8F091E256F68FAE35DD4BD13A274DA068D30261B5E68D9728191ADA08AB580364A1B2B1208EA951C6B5BE3A8E1FE4AE71B6D0B24EB0BB56864AB135D7C61E0C32594BEFF915A13F54926969AE42C5EC8ED1082EB29DB3354B0966C1B2B733A63C3B2E3752966439C3DC495A8D0A839F70DBC0E98456ECC30BDBA2DCB2B7B3EC2EBFCD9EF0E350F1C0A6D3D99C958E1FFC68BF0D538155DC3363D90E8F81660ADB1AD41462DBBBD26D3DC194079E1445797E5E96BB4579BE5CEEE49ACF9733B92EE574FAFA7CB110D391A7D91D8E81DCC8ADDDED24557A970E3A573CF34963305073771D27D389C89D548BD9EC9C5DFEF623F35647CE4192EC8EE6DDDE8FDCC92D400B4447111F5496AF60690FEC6067E57D824DC71C93C878F9FD540D99EAC375A8C07CB0C41A7B90AE4F3D922E2A903200611DEBF89902F4197300D45663FF6D07EF5BDA2D81402C0A395F8A053F5B154B3915C55A88D9F24C4CD7BB8528E51A2E13D8B6DD1D00A0E459B0FD3086AF9F812A4A504A33D2F019A11A00BA594EA67976C5DB88FC940B6CE7831B623964863BAE35DD3AB33C4B774686A9B6021F4EC90AAF4189111BB4DA032AD966C7B597149E4AEAF2589BDCFBB6A6C2FE4001C645A928794232E0980A0E9C5B2BC383B2C68F8A303E5F661FC920AAA86903914BBA9D70E520DA03516B24CD8FFEEEEEB2AD34E571CD030E6924BF3EDAE8EEB77E87E7F2C7B320332AD3442A099474B04708638CB5217C982F34A2B99DF75E46DA4B55A04C25895091A5FBE1FF9C2AAF9C3D848A98F90EC8023376857DDB0F9056E05713D8BACBFB55CF9BA5F242355A19FA33960AE107F2C4A9400574E08E78022F8F0CFB6B62DD0DF1D7C9EA9A6069C18110DADCD6B535AC715C045C261BC6D9DEEA00DE4E1C78889C18D8C1BA6B5932608458136C80251D1B1091C1D21B5B375A069818859FB6DA73DDD2D5441CD773F520C3066A1D2D8A5CC615714D823BA82D0EB7059D1F261BAB90043CC2645AF86CEDD2457BB83D8EE0208ECC4E963A12FACD93F8F5F7E5B74EE9F80E7E2CA79156877C8E57BC5C429FA175FF8909FF4BC2E45BE77C24761E4B394A7148F868FA7F39DF03EDFD2D9A3E541245EE18B1FA0DD39697909DA684240D7E2060F072C756EC92EEEC449A4FA63D02E928A389AB9D14D7D680BB3B25A025F781418CF42F6A8B7112BC3C706DAF5AA806FCED5BB797370C12C51E2E586F5919665D09D761AEB050F4D86288C95357C10589FE41C85FB0115E1E83D770FA31CEC617C549C5F922B7C8CB930EEFF4F6290C52338DD81D75C23B021C2B1CF403ABB9222D68D07BA50B87EF26005A8A6F020472BB037262A796A6470547AA31F57100D32E67C00467F12349C4AF86F6A40D22727C1EC1044BC21A230534252B802A86E6D303E11AAAC3A025A516B0B4E85A26EC27291B801D228CCD6955D98A601D3685F840197073C32057E481DFE480E0A79C098E3614B064D2087CDF811E49EE931A053A63B7117B0B32391B99CCD16F6AB4A9B0C9E427211BD2C7BD3C1610FF7434B425A4A3F1C1095F6AD8779C15DC39255D4E3BA20A52419DB1BA4691401E523471403C14CEB6571514136C1A7D4347EC82C0E41FAD6A6A48C9EF27EC3DF4396F436549E0A10BDD53F07E6FF14DA9545065F0A89442A1BD7FA2F42FD8BB1FDEB0F57C3599CD9731E2F1797196332F29861C3C236C431F9B52EF09F9F4B3E4FBE86E8785CE39DA11AE0E9921ED475E2287F8C54C1B52A02403651EC520876D440B8A16EF37094FBC903A7A12D195300134D08897B62120D0A2EECD93E7273A1ADCE9B56A1795C7C8E381C484B24F32F2C555E509CDD8F76EF8A27342FA3FA8E7F7FC1A8D33EAE9331D8FAC2BEAFEB0A0A24C216FA85C847C8399C782DAA1DE870671F8CAD81700F527FD0DF4AAEB0A226FA3338C7D2496E2666141D5A83E43B67C4CEF9716C6AF2BC87D7D01A7BEB6417D02F84734FF4207A4EF38A90AF18053C7A66A43DE11EE12B7A170D3B0BB5F6221A3466986E8AFC07F05AC3EDEFD09F672BA62');
INSERT INTO "frozen" VALUES('33b574f3b63d95f855e3ea518adb703d1cd62bb9860ae8be868ff21bb49ecbc6','power',X'7B2270726573656E74223A7B22737570706C696573223A5B7B226964223A226539333565373131376230333432616438663135353764333763666461326333222C226E616D65223A22436C6F736574222C226275696C64696E67223A6E756C6C2C226C6576656C223A6E756C6C2C226C6576656C5F6D223A6E756C6C2C22706C616365223A6E756C6C2C22785F6D223A322E352C22795F6D223A6E756C6C2C22726973655F6D223A6E756C6C2C2270617274223A6E756C6C2C22757365223A226C616964222C2262617474657279223A6E756C6C2C22626174746572696573223A6E756C6C2C227374616E6462795F686F757273223A6E756C6C2C2274656D70657261747572655F63223A6E756C6C2C226E6F746573223A6E756C6C7D5D2C226369726375697473223A5B7B226964223A226163653634376533343230393464333161353830356236303637613762636362222C22737570706C795F6964223A226539333565373131376230333432616438663135353764333763666461326333222C226E616D65223A2241222C2277697265223A6E756C6C2C2274656D70657261747572655F63223A6E756C6C2C2261745F6F6E6365223A6E756C6C2C226C696D697465725F61223A6E756C6C2C22616C61726D223A2264726F7073222C226E6F746573223A6E756C6C7D5D2C2272756E73223A5B7B226964223A226333626532346333613635623465306362376363313436633037663363646537222C22636972637569745F6964223A226163653634376533343230393464333161353830356236303637613762636362222C2266726F6D5F6E6F6465223A224A31222C22746F5F6E6F6465223A226262643838646466336438343466653761323431653764653030393833336330222C226F70656E696E675F6964223A226262643838646466336438343466653761323431653764653030393833336330222C226C656E6774685F6D223A342E302C2277697265223A6E756C6C2C226761756765223A22313820415747222C22737472616E64696E67223A22736F6C6964222C22706172616C6C656C223A6E756C6C2C2265787472615F6F686D223A6E756C6C7D2C7B226964223A226633306464663531623766373432626462623639383035303633353762343936222C22636972637569745F6964223A226163653634376533343230393464333161353830356236303637613762636362222C2266726F6D5F6E6F6465223A22737570706C79222C22746F5F6E6F6465223A224A31222C226F70656E696E675F6964223A6E756C6C2C226C656E6774685F6D223A6E756C6C2C2277697265223A6E756C6C2C226761756765223A6E756C6C2C22737472616E64696E67223A6E756C6C2C22706172616C6C656C223A6E756C6C2C2265787472615F6F686D223A6E756C6C7D5D2C22726F75746573223A5B7B226F70656E696E675F6964223A226262643838646466336438343466653761323431653764653030393833336330222C22737570706C795F6964223A226539333565373131376230333432616438663135353764333763666461326333222C226C656E6774685F6D223A362E302C2270696E6E6564223A747275657D5D7D2C22737570706C696573223A7B226539333565373131376230333432616438663135353764333763666461326333223A2261663731653939663438353234333831303861323137383764353161653764313566356333653336346635323563616363383734623530663539343534656338227D7D');
INSERT INTO "frozen" VALUES('46bfbe8a4aeea1f90a6c3c12dd08f9361e5b861d7241cbd8e1428b263b4bc329','part',X'7B226E756D626572223A22432D31222C226B696E64223A226D6F72746973652D63796C696E646572222C226465736372697074696F6E223A22222C22737570706C696572223A22222C2266696E697368223A22222C22756E6974223A224541222C226C6973745F7072696365223A2231322E31222C2263757272656E6379223A22555344222C22737570657273656465645F6279223A22222C2261747472696275746573223A7B7D2C226B6974223A5B5B22532D31222C322E305D5D2C2273746F636B223A6E756C6C2C22707265666572726564223A6E756C6C7D');
INSERT INTO "frozen" VALUES('cc462d6aade99b6d850f37587cc23cfce2698a965c1428852d9fed81e2af6963','part',X'7B226E756D626572223A22552D31222C226B696E64223A22737572666163652D756E6974222C226465736372697074696F6E223A22222C22737570706C696572223A22222C2266696E697368223A22222C22756E6974223A224541222C226C6973745F7072696365223A6E756C6C2C2263757272656E6379223A22222C22737570657273656465645F6279223A22222C2261747472696275746573223A7B7D2C226B6974223A5B5D2C2273746F636B223A6E756C6C2C22707265666572726564223A6E756C6C7D');
INSERT INTO "frozen" VALUES('0a1fd385719f443d58ec8bd17a0b3bc46f3dec6df5569e134519208f16824cc1','catalogue',X'7B226B6579223A2237346534393836346333303266663930613137343137356438636532643934303930353463336430373130303330363532333233343263643135396338636639222C2272616E6B73223A2265336230633434323938666331633134396166626634633839393666623932343237616534316534363439623933346361343935393931623738353262383535222C227061727473223A7B22432D31223A2234366266626538613461656561316639306136633363313264643038663933363165356238363164373234316362643865313432386232363362346263333239222C22552D31223A2263633436326436616164653939623664383530663337353837636332336366636532363938613936356331343238383532643966656438316532616636393633227D2C226F776E223A7B7D7D');
INSERT INTO "frozen" VALUES('6212ba629f8f6de9f001a5e4ccfaf14604b1aad1bc1d88885d021dcd715ba9e3','project',X'7B226964223A226136396236326366333363663432363361636630646463656236366436653534222C227469746C65223A2253617665642079617264222C22626172655F756E6974223A226D6D222C2273657474696E6773223A7B226C656E6774685F7374796C65223A226D6D222C226C696D697473223A7B7D2C2272756C65735F6F6666223A5B5D2C22707265666572223A22636F7374222C2263757272656E6379223A22222C227261746573223A7B7D7D2C227465726D73223A7B2263757272656E6379223A22222C22646973636F756E7473223A7B7D2C227261746573223A7B7D2C226C61626F75725F7065725F686F7572223A6E756C6C2C22686F757273223A7B7D2C226C6561726E696E675F72617465223A2231227D2C226F776E5F6669656C6473223A5B7B22656E74697479223A226578697374696E675F6974656D222C226E616D65223A226B65795F67726F7570222C226C6162656C223A224B65792067726F7570222C226B696E64223A2263686F696365222C22756E6974223A22222C2263686F69636573223A5B224141222C224242225D7D5D2C226C6576656C73223A5B7B226275696C64696E67223A6E756C6C2C226C6576656C223A22726F6F66222C22736F7274223A312C226865696768745F6D223A6E756C6C7D2C7B226275696C64696E67223A224D696C6C222C226C6576656C223A2231222C22736F7274223A302C226865696768745F6D223A6E756C6C7D5D7D');
INSERT INTO "frozen" VALUES('d9eaecbbd46d50104cc3078eaa5102fe5a9aa8307207d6798b67bf534022a7dc','rules',X'7801ED9D796F1B499AA7BF4A428BC1B8015125CA960F19FB877CB53DADAA326C57D702C6C0A0C894C43645AA7958A55EEC77DFE7F7BE1191914926491D358B056680A9B6C86446C47BDFF1F57FEF0C073B473BFDDEACEC4CCECE66E5BC33EF7D2FC73BBB3BF3E17C54F2DDC9A4FFBDD003857D53F46645BF1CCFA7E5808706C3597F78351A8EF5E46C31FD51DEF0E9ACFC514E87F31B3E1B4FE6259F9CF666C399169A5C5E4EC6C5D5B4D79F0FFBE551D1F357CFE6BDF160560CC7C5FCA22C2E8783C1A82C2667F6D7A8EC9D158BF1A89CCDEC6F5FA698F56E66C584C7A7D7C399D6E82FA6DAC5CF658F27CAE26C3AB92C4E79A038EBF54B7E3AB15FDB494ECBB3098F68ADD3C91FC570565CF5FADFCBC1CBE29A7D97C57E71CD7BCB6238D777E1B87BAC311A5E0EE71CE4EB7F72F6F2AC9CF2EFB3DE6856FE9FDD1C94D7C3F9C570DCD1CEF95182A40E72313CBF28382C8B0F016C399E2CF880EDD86E4600FBDF591170F3C38DD02DA7D3C9940723789F3F05B4E5556FDA9B0F27E3A3A25B747F7A22A8DAA92757E578383E2FD8D60F0012BE2A7BFD8B62361C18BC7BFCE4B1FF449B7FE99B02A20688C9625A4CAE451C0D581B8AEC40636149C7B3157BE7BD21DB988C23322F05CFEBE9647C5E83E6D79DEBDE68F4EDF27267777FEFF9EECE89ADA8CFF86D51DBA170A6771FD9D684DA6276519673BDEFF897CF1F7EFAFCE643717C70A8F71407FBC5796F715EEEFCE756F89ACD87907C86B044FA8ED0C21EB0E3E9C43C796B0C9D9793CB723EBD392A4E4B48640003F84B474350723EEA013E68A107418ECBD132A4AB1DDC0AC0ADC70780F30EA43AED8D015375F45F1697A7503740EECD81F798ED16F3E9E24E54E94C530CCAFEA887D828044CC39E7332F4AE5DCC960F6BE4532394D673C0B597B34E0FD29F67A778FBC7108041F2F675615FBB60309A32E9C1E31BB178DD9B8A737834725AC4E3F2A645A06793C9FC6A3A1CCF41E6990BA1E5B37CDD99202647BD2BA3FBA77B8F0F77777EF54F1CECB08A8B5C4907E8C4C42BD09A4F4625F8EA97028D89B9CBF27232BDD9454A4AF09E0D91CDED14EFA09A2C89A706B0603C1D655B42BF2D88B40BCE723512074B60CC86FFE21F1218358C3B940C44C6D33BEF27D7D00B00191B568BCBDE4D3135745E494CC53DEF9AA21A4D66A262BD9F2FA7BC7E342B0613ADD050456B00F67D8CD0EBB8CEE80CA6C391F8320AF5BFE94BB8C3148AEB0B7B643BF5D814E08D4DB99033E9AA235C8B1983AA043DAC064F4972BBB6D2D117633E3D9F941937FD75529CA2DD0C0897AE1C5F16B6C702ED8C103A2F782DFF80588386F0E3D4F0D0CA7935E80C673393112BA123A186963555620F6E65416C0451BFB790B6438A4C46231187147F793E4513ED0A5AC3E96E2010C1F082FF544C7B3CFB2E713B9A4CBEBF4435B1796012B77967284CA683526A7925149C46EC9107A491324A3A591086EAC8089146F4B7C4E326CAB09D25CA70C3E48EA421C2EDF4278B712E934FDCFA08C65DA038807507210C438BF8D9F14C96E415A8967D81649079F9C3E58AE4C438FC1D8459B05E8E070321BF3F994ECB7E921C328D821DEA12773B361821D03A7D169862487784858C004EF812AB4EDF4A21F46FB0982111C393F4F836C76FF241D4404781FBDD7690CE70D375264A0EFB689A6B6CC7D67662D9DA48FB7FA3AFB449A848AA6D6E1C13D9EAD88EC779115F9C3B3D22A6BF11996F24A9264C578ADF3A6BB9C435285778341102DFD95630C0A5D4A022917D00FD67B4947D6B6C291E65C7E149DC0E5EE0C426EC99BD6C0FDB41ECDBFEC5045566DF8A898BD31B93645BD2A620D8E293682BC1BAB5ADDDD3AEAD4E1CFD30E91EFCCADD0A5A17253ED0DC0990E55628FD56657309090E3AB21D5828D2C12FE575B023E0AD5E61CF986DB00D092CDB2D0D22A84EF4A94454C8719363585E4A6BE20C16E3B43CAEB15C9D0A75DBA187DF748C64B233FD6AEF31D31569E6C7DBE6384D8A8E5202CFB66E3CD89FC635358FBC3A6DC49F8EDB66CF6EE5DACD2EB0FAE5D861DF7ED6BFA3633FBBC4C1430AA6B7BBEABEC631BE90DF37BF9E14F638B030F8BCC41AC53F62D708F5208C04E2561B7817EBF1EC2CB3AF93F1E8FEA96C47B3A78AC962AE6D099F693BD2290F65749BDFD6C17297F11109F7B3FC4D5702D82FB857682DCE1D54635056F71762DB789A2F8BDE6871391C0F1797313E20D09F2E8623038CED3F331D4EB0988A0BACAD283484157B1AC31B332B189A0650D332F682EDF8E194D8CC40C1931C56EF717ACC9BEAE14FC98BD45B71204E272370A625C30F6AF032DDC1979DA872817E169D6A724B83F571D2793BC7D4D2873F759F62186052FE7321D068C9B3E174361755F606C593432C2DAC4E1E5D5CD9B7BD535155F710870D29E382A31C989B1DB4C217626D3C6A7E681061311224437E37678800E80167D686B428362F22475FFC6378AE4F1542B348488A537DDDC1B11F95DFD8DACEEEC1DEFE6EF29F9AEF132FE0E4C32F3A8A4EC7CEC3898437C555BADD6EE7E08930CC3B39A707E514E3C3E184D906C31ED18D721A22394FAAD584B5D13CEE3D5B4B1C27D7CF45C96CF8C7FCA67346A0891081A4B98CB7FEC55A266F55164E4759402C63BD57D010EE41504E76DC2A7E355B60A43B7C303AA211751FC2EA3EDD77903EEDE6113A76200A9D1154BC98FD7B31189A00E84D6F8A47271F3E7FF9E9F8E4D7E3BF10848B0E7F512181B3D488C86DA14B19C49184A09033714854C08287B34A3AEA5E716CECC41293C2E4710CF694638235E7E5A0C6B25F77D2560CC5DDBDC3E7CF10EB51AC6A053B67846B85E8260929668C359CDEB74C4C62956F292EF878AFAB957E574C90502E943A2ACF104D2BC283FAA19DEA6E64D3EF9DB2B779E77C3ABCCA28E6B57FEC2241DF39E7C538DD7DA8A3217696501B76E44B5BF4AC07BA09D84DF968705343512B37F47B979DCBDEBC7F513BD3A54C4F7CE4D1D5B02410630F40241E5C44066472F3CF3BA1588DEDD5B752B3962163DBD2B82C9171124EF69BE847F57BD329F1D32D014198002F4DB49A83C23EB55713B83B876DCAF975592A08467489F0116B5EB84AFAF3004136C4B70152B40BF091F173C405C0F04DD5CEFB75071BE9C6D8F27194F3C435701A56BC15B30711271B0BD0572F6B35A4DAA92AA0A073365ACC6AA41571635F78CC57B2DE0F8837207C9398B05412787840A0060128B4612710199D93204A949C193135F51BA18B5C199FCF2FD8610D1575E26A0AC2FDBD672F1EE792507015B9587832989868D60A02C25D83EF770148C446713514AB4AA9CE17D3F1ECDB69793351E4CA74F8177D04DE2C6EE7BC23494B0E01B2D5738657718C18C7402CF3626C11E3C6AA6B029F112428E469EE70BD8EB88D7E6FB0586B9E322B879F3D206A3D205A5B27C4B75C1AC71D4B9498D969305AE991BF768F5A6123FCE97082EF4AC924B8D6D7512CBE4E059BB9E26A3AF907B125ACFA4CD47C31890269C6DD02AADA83B701D8B2FFDAC6C44D8361760167A042E22E9C47CFCA6B3E3311083D2A2B499A924FE6D3E16553DEA4C3B93170B0F7AC3205563000675C1071F3AC6E7C5FDB6EDBF317E5623AE9D4E015FDA9B7E19B33B95517BD914279250875362138A845EF296B64AB42D98A31EB8867C33F24A767FD6979BD5BBCF9F04BD17D7E707850FC54BCE59F8FF71FCB42FFE74216B2451515B17C593C2E2E2F3394EFF2158EA6523A7CAA58655FAA29B7EFDC45F033195EFC8308C5CCDEFF5EDE7CB33FEBAA4029136D98AF3DDB2B81E182C9F226924CF16DCBBBD9E53BA9A273122A33EC53134C3C46F2215BACBB1F154F5CCD1FC984E0D25AB7C7FF798F48ABB97D194FBD3237501E03195FA29BC6FCF2884C71CB5F93C114D2EDF724818600F524798FC2810B9C9F615F9E700CBB545854B059F0378F32D522CC7BA3C9F9C2C47286C2F1626EC87B2E70FE2E297FDD23C9EDF162BEB4B4A0B947F63AC487EB2CF1E7CFCF0908FBD3DDBDA7767AFDE2E91E6E1BFC47D89970E387CFBF16CFF69FBFB0AFF5C793FDC707C1DBBC552ED1C97FD6C1D1152D640879678C81C7EEDF10EBA40284A09FB30AE9273CAB5BE26159D435307154CC4A9886CA13E5B7C4FD083045D7AEA17569636A0F2C382E445C2D4E47200B829CE5D932B309C2B15C22B2E5DA5B8DFDFA0A3F09A148157B734D36B62A06A3DD4B6544901A19B47E2F47830EE65045BBFC319B97E588FD8F5453731B9DB021ACC1DB72D1E2AEB95617D3DCE21C16D2C90EF1D7C878323AB03D64DF09D2F1B93FE508EFA96581AA224C65E6C0FED7C013891BF8CCA02A033EC4D825EBAE8703420C217C623B7475671199628C43319122DC1E24A2024F00652079CF87C992D40EA632C85322A8119315B054D1724F7447E1F31213B62DB80BF98A39FAA4437196F37DB0896999C3C24469F03A63C856874DE7E23D3A568D72BEEED821A5D24C94996638B1B21EC8806A2F549D49EB556F72F5AAD88FC2EC668EF1931B33BE1A4752F60BF93820E3AD9C25185F103C46029F11895B63DA56D852BA6E369FE4AEFE06AC199AA644BAA0F3F0CBFB90764497E0A1ECB4EC894721D023044D89032281B0EA1518EA4FAE6E080935C0B0C4D239D262A8C0E340423B222DC4DE5781FFA11129789D8AF893612DA8510937707BBA71967BA174B9AC65353283685288ECCFE736F733DD26B93D235D12871B8EEFCA45027E08048278137490AD85C8841233BF2C752CAC3730B1867F445F9DB3C5B8E9DBBC0B1F45333F56947C2FAF940DBD0F9FC4D52C0B60A57EAFDEFF7C5C1C770F9FEE1D982563FFEC3E6EB24B83390C226CDFB5BBFE0A9B042E710D937F5405C47C5F909370687CC2AC797EEB2AA5C632ADDADF80765DF65853B64F745B4EB4995AA4A77AE63E006B60D3EDD44B14DC94937A359ED589AE808FF9C454414853967FE0250E211E2C9E199EEC7667BDEC9D2B886A7A393BEBDB11EE30CE937D8BF965724A56A97B272E8E7A53E290AAE1854BB58307E5526C055B3CE44B645E9995A2455C429D12985622854063D84803423DDC3ECB5C029453FC35D534996C43EF8CD06E581EC6E6A22D5F8C94496553C48FF8B5023E0AD75BFD9A76B01D702DB43555DD66004D24A54FE86543AFE2C2B68950CAF200206C90D3124CC8F3AAFE0A4CFAF68C870CFFC092B894D5181BF36D7D4E72A2C3EF65E7CC2A29E2199D84A01DFF165C884414D9C62259CC3B4ABAB9684345B3CBFBB05025611E77331143662C265914E3228DD3E2C6BE5CE1099A36101CC2FE23E564124074A403D99256999765B148D5161478436467324264ECC8F2E1E8E217E2BA754BAC551A29EADF0155B58CC097940AB06FB0AAA862CD2AE705D8646CFDA377DF688A471562CC630D1805AF4D2E7650B3F57856CA94A42487D1E5F2C735CEFBBA4310B8775E5E123B35CDFB62EFF0204B74693BE985C5E502CFD6E05587965ED94218BB94D93FE7690BA4C859FA6655ECB6165935554A50D41EB5A81E60DB7239BD3A42249F9278A280906FF77047A846F5477BCD8D12115BB3317CE8B872C85F7BDE7B8D2DE0F9838E47AC2BB5E661CE748418338E29268150E7BA278776F7BA87FB0012801E0012891E2588F8A47F41B4D8A25691BE8A47C79F7F7EFB53C5D4877F6925B925F15627ABB87B34A92F6A5415CC047D69E19C2CDCA0A392B9376FD513FE0D8233F0052B2F24133E2A079000C80BD26A6B106814E52F4BC9D5683C767777DE943F86A6F529F890B45E470BF6AA5A4EFFE0C5DE815E12F2FC77DA5B7A61737B07B7DD5DBB68BBA07DA1A3C44927189E51797CD13785BE81424C233D8065DAD08CC4D75EBD2EBAFB84430F8A4707FB075DC8ACEEC11DA93853A158130FA2172F58B6D06C83F48CD422F704F7619E8E6174972C555CE1B16C0A24C2756F8C8EA81159062FF572543D4B5626BF14BCF84DB5E4295661DBB0079B1C6BB55992947CB17D718D9BA37D7BA3E8BABCF4D04D28B0AC80F0D15A04B4BC15B7BB8981CD448C990FF9DF188B4FEFC26CAB9DBB198C3838241ABA73B2148D486B2CBF52F614B28265835DB88603379D6C4D6A83CA858E4ED9B4EB3E8C3BE6B21904CC64F54026D92B9C07144568D1C1087818ECE0844F26A42CD02C9E3F2571E3C6C5CBA0203C3A297B80B231FA5146C42454FDC1FFBBB182814295AA602AE313149BEB51E135A86B1C28EBE2D2D18C98BD003DFE2EBDAC86D18C92EBED77A4ECE69D0132AE1FAAB1592FF2FE6F4BF4ACA7F184F4F4C380CD519FBDF636948DBEF5A8DC69A93E0641C0F7065842145DC467A6BDE03EC556AB41A549E75DCBC86D43E7F51D2FADD062C4F8697D8FAB0EDA4EE866B95AD86D0BA9630FF3FE55B1B62D65CF1D626C667BE3F04742D406AE89CDAD89BDFD2CFCE97963D3ACEA4F4D368878B89B445A23C28CB876B297D8F68079E0173DBF16BFA1266A1B04AF8BBFADC5EE62B680B5BB66AC929EB892CAC77896B31CE203869E60757898CA7BD9DE25B9EC050801960E8B2BB46F0CCF87E39A1440C8B8D90A18437E728DA4DD0D4DAC6B8C53625BFF02FA1BC84CDD1B5E57349A2C7E90AB7A18715009BB3A69A8C85274E23D1BE26531B6E8BB5E60703786063D1C47715E3F4CA5B7D20A2D285F034785E23700D153D27AF0CF069F078BB4D243F0476F7CE38DE4606129DF707B488D7AC8EF0DA0B2679CE07E0C5571F140107B59FCF2EEE371F17C5F89832B55771C168FC2624AA1C0B8E7C3D351B96490B651EA4CBEBFD74F1092E060D1D290A3F520C00FAF855A1D1298CA614D599F7872947A6A3193C78BD90687A5D530186926C106AC48AEC9C74E0C4901A0F242B508D2961AA7E113B4C157C1AAA46458DBB40CABAE05ED93BD674F0F9EBCA8FE6FB3311B8F069869D83C55490C52CE0365F2861CAC8D4D2B486145EFCA935AC04BF533AA499B09325E544E57EE5255B980A8B7AAD7F6DA02C6B76723F306E8FBE25DB38E2ADE0161DD92B3AFDC1EEFD36FE575F17F32BAEC64486E6DC8D4B637D24A98EBA3CCE1371BC0B7CF1E1BF86CBABEFB38D5B1883ABD2B96F445E34F5FE8ADD008860890D54B1B285B23C11DA024C8623EBE064D14AFDE6FF1F8F8C083D27D30F73DB30EB01633D4B2E2E206A865CBC7A05BEB8D68C0D076F96D73762C82AD721463166C38C67131B3EC2E90942BBE1C81FF4D4E867FE500C5527A689A8C9E53C8E11A0061EC75C0922D99C36A4BD351E2F0C6B385494A7992627BBAB3588507632C98B0C4C7D87FD6164BA43285351E1A641FEB41044D6101F5002DE42582EF192A450D73D5661A8457AF6CB89330AEBFBB01CB2476D730B34AF53668333DF2D060AC99B1C99789C504D195C9C2A0B1A430AB6EBB37F8F44E6F9CD9A58A6B76116A7E40E6D562641EF11D002A26529D73C76CF2268DA6DC4CFCF6014423D169625E14DB0C821F70BAA09BCC4AD494F654ECC5948BF53CD70BB68CE36B79236F8939A54884D7F187EDD344A8D92B46D0F6AB3BE5E11270C69325F8BCF235EDE5169942933C2094C0C49AB35BDDAD9FD8B4D7D699453B11BAD083C04D74076598BE7C006C57E76888A2DA5A56FEA572E0A43B50F616F9335185BEF12A52B545D5A452ABDD6B07351AE8D8A48EECA8EF3475272532F5208B39B9C4471FF4E0B1A3D82AB6145964E00636C02DCE51D545D46C97C49DA281EA9907D8BC47B8B6AB99300E08319166CD44C689E26CCB3C6C77EE53D2754C671A0C177211E3B13F4DA83F378B5C361BDE1198D3934B6E24AD636639677179B56BF2AA38C948CD96C57C7849FC43E08BC666CCD260A1CD0AABB6F9F2E1B873F8949AE4CE1BF2582A90B01DE8F71D1BBD616BD521E61B8F2D1A150F7C5225B2AD27E2B68A1E2D2E135AC9745E4D89DAA8C4FC50B3E9C0047B64092FAE90E3D42BE8D7A857AC7EDDF1253D919A551D0A3A444C05C7CAE17217B6C537392A9E147F14077B8714EBAFD1C414E68DA96999E0A590DACCBD948FA3C5B9FBF8330BD22B026E0FD4087305869AF5BB028DD1A07A446D8A9665F0949B37A0F47BA18EBC027030118D26CD34B4321EE80E71737DA12254DF9385231DF3576C773B9A14C179E58005CA22519EC84BB73478A025ADCE966E7BDC86F656BDC30B1D55CB7A5E55AE5E35052ACF8D78C060090EF65331650E011DD8712237C44A9E427A2D544CEA57EE8630E481C4060686CCC81A90F085F965BDC835543A5A59406A5495E7189AB38C538DAE67BCCF08B871E635F426D1DF49B9FF25A1FE3B411E32D23655D0C4218FCBE5B7B17DF7C44405D628CAD30AD0583956024E655BB17552611B4E2D061629BC8438ACA24EECED34078495194AC7A981B655A751CE6FA69AF0C39E22FDE9E8B94C8CF1E55525D55B705D032547C14A4371A9DC2698662E9E42468EA08A75D418638AA22C7D4F3D14899A18CA1A61ADD0F4418D6F3E1EC66D8206BCA26F22200B50468A5641103F49C93165DA14423629B11D10D5FFDA2132EFB1C708C36375F693B8532ACFBF74B18B00034FC86732534D9636A9CD87998E694AB0987FB1E4C995097F9F21B05BFC4C0192128837BCFF3DA472CA64093CA02EC1A9723054EB1C56FE5ED13DE80A9FDD83838A0A5DC8793545305C22FE456FBB5934C60E247AC90A9A14EB6051CFA0DE026838FD314212C1F60A78B9A8F7B729980F3506F91C9FAEB1DFADA016100E4CC4FE720D1AD4D904CACA626301C1882888B9D80118BAF56B20C84672D662055261D32129A1C8E43E8FC3985CBB5C1D5B6951B1CADF7815542BAF6BCFF4EFD466EEFD2E1804478600B15192D3ECBD48F316407EED7D13FA851BCC213AD2AB029106E8B9927D0E168480A61EADD2203A9E192C35481BA6574099EA53CD4C6CC4635A20BC469198048392E1B9DCB43CC6F0B2D211B3C6A2D8AA3CD1BB13B1B74EB26F7B995A34306257B49B353CBEC0DFEAE18ADC2D4696CE8E9D0D217A530B80A587250A1AA46D1BF896598A07D66AF74E1BEAF9F6100C3D66EA451D62A5426C5D4236C42EF5CE96231C1507CFF5CBC7B21D77BD119C1F53B7291AE818C1FA32C501556B133D2E23532354345FF29B0EE626AC87D74FAC27DD73AFF684851865035B45801FB07533AA90D322FBFB7195D3A197353EDE7FE2F376D5F29E484ADA892772F9994CCCE2DC1AEBACCAC84810A5177D0541042BE0063BE00AD9DD3B3204E95566733FDD2D98C9DBF55AFDAEF8FEA5FE9290844D28856C150292954BD1AEF77216AAFAA4192965A646BB148EEDA17727D65B08830D6AA8417BAB997D8558D5A14DACE20AF9D9A0498501AA413A6B48700BD15A41553D50316613555A03BC1B33E47A9BE4C8565640055D30E4DD609B755AABA26F40B81E606C2B82E9B97C33A66966CCD7C0752B2A5D3102D2C1295358C2AB22DB000959C19E3F9755F25FA5C636502E22D6A46E2CE4A836D88078A269AFFC38B1CABAB5241D70194C302B3882B45DBA42476B10803B98A432A014E01443D88817650B6BE3237F432F6046F1B162AE8831512012355732F74244AB89568BA27B59B7C8401C9462EA367DC91A44DC036DD1820D4434B361AFE87BC653BE5453A496902ECCCBD5AD1DDF39013812570FDD81A3896281A152BC718ED09F67FC6A3015E0D81E25AE9B85B850D5893C0F74A3B4F9399A9536D529DA7606923BE0C04C277BD3FF8CE3AF8A8E264278D98D004D59048CB63C794BE3B6001494B58DB1FD46DA7AB91255A7ACECBF90E2B4787D186054F55FB295060E6FCD4CDAAF565CC3346BB88390BEE0A166A2A60AF865E232120D1DBFBAAD425DA29DDBE73C9460A888173B46E7B5FD98763471AA8FCCA54FBE351E9817961A1EBC0D69CBDC47AD36DAFD39EA7165216504FB9A753D779C040610141A8CC9EE40B44BA0826EACF8CE9856E5DCDCD9F0385ECF80ED657ACE855FC3648E67B7AD1800FCD94829B2F45C98D35E3C60AE4293064FA7434EE216E88BBD7DFA519A0C1A8763A5928450882C0DA7655CB2AF2549AC5DC12B4F4BFB88F7939595D9610153D8B642881DD14AAC45B9EA633EB17AB0163B780D0F04248BF37257E877FD1DADE21CBBC846FFC99F85E688E5016DB3DE05D6ED86521C1B5CC0BAF5AC585E45DD9027725DAA397AA191C9416C729288B0B51F461747B0F5D36DC29EE206D59B5B747FCA596DF1CE5607C0F27C8CE0D71E9BC5409F357B47E90F3B80649905AA1419BCADB4AAC25481C0B6D1011B8D280C1BF56458D0C5B9CE8EE3A18066C16792FE71B6A2636A8531E52F11E9BB025F832D390356C8B586071CC42627805CD4CB01B82E3E901A626B2AF41ED2D7B25E183F0C864470E951964A545411D5D0D3568996D8F9F0A82137FFB2CC1B61D095AF119D56BB6F226B6E0C29949AB5E5B19D6810AE082450106D42324B3445E3C69D755FD32452B431435010FD61DDBE8DEDDF75FA812DB4A223F8B373878579623C524BDF8B3B1A7B6E42BCD55153CC268D5689D5227F326F20DDA4946142B9B00FC2244BC64000B2528C9EDB8D36A4C7EC356308DFE60E206F05B4C649111768A7EC6027A5B84D4329C8385E0E39262913AC70285FC3758CB64CE7C12F6B20E8A5A196B675D3A136118EF7D85785E6517130C474623F51A44254976A7A0D0B0243D8DFE73301BD35EB4ABC298EB446BA29414D0469A282838E7518818D28E47ED57D1D628ED831EBE96CB5A6C91CA86911463EE3C04CECDAAD2D421D2605D2B072C42697ADD0F7AD8B6852AD366DEBA158FBA95D88C6CB1902D323A51C12184047C3AC2C9F684D6EDAAB1D825CF9A6206A189014E612F4B3979366571739CBD87C7EFE57D2356E8FC62F66ED0B29FA34B8FE4213CF29005D23A84C71D7AD67813D5EBFD1B19EF65ACAF8437E33874B4C6F6D370C54CFDF0505A112BE065DBB0F2E801345101BE9ABD55E6E06E867BB87C99513D606192501281ED232759AB6AFFBE32408857275CC130656F3AF452655E120D01B85AB632E60276A1AED672BF81AB08CAE6B603D0E03028CAD8C623C2C1A001AB285E568490B6C49DD4DD0321DDD6C70E877C65B23A3D96757F09C5DC6628B030DCD12E486AAA277A6FE844B2E7C222DAF81505BC0DE8859E0B643F16B446E22614C401358FA9E4B61B053CC19A180550967AD76E4D8C55EE21B04DAA932AE9AF56A5CA4F840F827463634CF6D48B7C182F55E469982EFEC06AF691EAC26CFA9626C6B42831838129F9074472993F0F064AFBB47F2C80E7CC8BF0F8F62DF66D805E4676A300CC808E410B7C59F1021DAE4CA0087DB2881E8FD1E5CA015FA2383C79106A79A5F9A45356CBCA0450C709A18AB62A69411BD06A630918D3D0DB89D0C9DA43294DE15433C2562048BC10F1B09161B46090A8B6FD8C10412E76EB35BE0C1A219786E6A6ECF84FCB17F12F6D780FF9186DB0CCF42BBAAAFBE254EE0F192476339551D25C523E4E7C17EF7C55F2AD484A6F0037A70FE3139ED183964E33D1AADE28CB5E6ED01F49F143A16793B6A8CBCF94BEAC853FFD0B444897199E7891C297A928E737A79958EC4B406D7D724D643418697790B70B785B3ACE80CC8EFCDFB6A00D782838AB372B9244AFA6E0AF5DE70E51A9DB8055850F3E7C0CB53BA99F3D16A35689B631703242EAB5785EF8CCCCFB15B5CB938F8AD044497898A8C05FD00E91E097C8DBEACC1B9717142684FD7F87DFCCF8AABD064710C8050A5C94C7DE203DEBA93E0B3749E3CAD5653CEAE3C4C2C6728ACE98E07D1C056AB403109E3EB8E10470D75A0F2AE01746D8351551963D30B2CBFF8A87996CCB7FB1B0D48668A48B69B5BEA0EB6EA01184A86A6B5BD9BBE75DCC9B90439089CA8660100E8A9A1A2CD9009B042745BD7B278324AFACF6ADB8C51228F4BFA3AF7A5F468153EB1D22375B11A2529491226FF8C839E97007019EE2B6FA1493F955734F64B33460BEF5ACD3071740CEA53252C5C1777A467801D6207E1D11B4965DEF846E2E02195B09BE4E63129DEDB401415D449E08A203D91625A469634BDDF50783FD06A2847F729F2576791FA69D25995E2E80D42417DD4D661031404EA2602CB6C73FFA3ECA628795F16BF9D30FDE3F1130312FF3E78F144B715276B10C353CF73867A0CCF2B10AD38536717BEC70C78222F4372C4F2867801BAB123BC13A11F5722EFC3AD7FC63C713AD32D9080116B41B59CAA4F70103B26315DD63464FA9608581ED99BE4D4E1DE1F8687C747C5E1DEE1DE33D021AFD3D73CC30B29458FB6F83A95F8CE1330F9E32E087C3E457C91E8176F5273DB44C91465981AC5F44265EA06CFE8FA7AFC27125FFC54428A60D09CAC0ED74D8EECD2484B5A864170103EEA95EE210C77373B834C52F992E7C7709AB24DDE023B579AA9B6CC239FB1A2EDF620AAA36DEA1A5EE578C695D471EF9994FB6FC6F9731887D97F25197298214A2ECCFEF0A1D9FB6EDC560C7C4F43BF125CBEB05919B97458C7291FEB2D70932B53C55E9E160D8BCA648FEC519598AE700A6E41C5B3B237CAE0F4D7DE4C636B1061B3CB0964ACAF713B4EA7FC31DE52B8348B4C836831B16BFFEEEEE3079DDB4A12A699C31FA5382A8E5BE429880FA53641E758A85E05CB1BA32B8D547E98EBA0D3D4416985B9D148B0C34A232837EFDAD56FB0D1909D1A4CA92EE755164C237153F508132213C02CAA8BFC22A096DDFB91CF4B390A73E6F4D66630718361E8E309339C35072FCA870BA41DE179A699826853AAC0EF89446D768DCDE80BF5CE54702A39E8D68FAA1032B301D0AE33213D71835C4E7B0E2F735DF100F6A2B18CCF648A02E237B9D62A33C9A8F1161180350AD5620095C379E45E7C58CAA639C90F01AE81EFDD68C4FA7BFCD3138CA075A2636B63914B94EF652C7EDD8920F300B2E79EFF8A9DC67C96793A91A83919124DE3AD16055EE1F0286CB1AC4E7F53654C463B927F2E59FFDBE4FC134CCEC558A33C96ACCEDFECE3D5311A33DE2CA473AF68F0BDEC4EE29B762943B4E5EE6956C6B60D924610AACDD2960D1EDC8218ECA4D30FB3D57D2CB9C7480E51A7E64E12E89402CB029F761BADFC362F6DD39318BB5904A2510CDDE6F0466BB2A300B6847914605FA299695FC4CD3040CC3D16FB149B3A0486EE82AA6A3EA7073413A7DBBB39AD6EB0F997D7C65EDB5DC232CFD3766215B8277815E9F4E4452DC6D6D48509E8A6140CBCF573E2FFE8D3C6C2F1F8BEB8B918D155C69DF16883B53AE17B7864A3A1DEE3F5B4DCD5B2BB43B59E67A0B21B92FD9E0A8D0221748A757F1453F9B7D2E83E5D92C23BC2508DDBA8DEC4CF749630857265BF987F0725AC497BAD187C39A7ED8ECB3DF1DBD58AEA169520990DBC54BA4477FE5A01470462B06D803B9E95C53B2BCEB0DB6701A9BD4733FC66C3735D868A7ECB5E8DC38656D387B2B57C1C9B8CBDB4D45539B9624B960FAAE1A58D29A6B4DDEA3219CD98CE58829099FA71D514ABF81ED3A496C7306E0FBDFD38CE3ED8B0DDDDE2D91E31200FD24EFAFD05773512505C5A720B73F57576D77D40C054B66F10297A27BC2BCBA0325FF17C2991C5D8C34CB64E424F78D9FA34BF12CA08777430574853C73D3242E20BC3D4A3350A316D0F64DF17F7959399C980FC9A379010B56B5BE4DA2680D6444CFA3423D2169B8901AD82EC01E99283BDC7C523E6078BD8748F17ED18FC33C934D9674B13B35E16F63C4962B1369E8C72B6E49A5C48ED16EFDE1F17E70BF248BAE994F48BA53BFE182AA2501172DE47E935367EC040DB017E4EC45EC318538AC6265E4BA130548D7CBFEE700A33A09E53FDFE7C7727879DD99DD212E1E5FA654E69011E0D73D06FFC8A10B1773FEB0238EEA7328CE8AD0D88DDE6C582A2BD3414000AA8312E090D5952D538D92AC4A591F4F63A88D192E7F409D621DDEAE394F58B083A2A6CCAA86DD53D0547047820055DE04349AAB5264A5BDF81FE9298ECEEBDD87B6E07B371C1FAF38539F99A4CED1384F7BAAE05E35FD54861959B04C69DD1D83CD1F0B0B84328929B691992EF563E43889F847A838CEC11340D34D7F21FAF2F4AC2B0267048CE91CEEB51940EAF0F552CCC0F93CC8D8BFA2450D13A3B5346C4537CD62C689959AB59007B76ED708F1438FC12E39596C092FB90F9634834385D389F2DC81632E34B89432C47E4EC0FC6C133CF50E13685E6E0D7C17042D61686934914F62432C966CF389CBE85C6526ED3042E1A5FF6D6D1E9DAC935045AC79F8EAF9270AF60AA170B8D7A83AB7AE1C227DF00819A5302F3B46914DB2D8670925BD1CC7AA36320E6FD8B8723BD26AB3FDDEBE6F3AAF7A8305E39B21ACA209642328A5CC72BA4DB6EF181DEDDDDE2D36EF1D9F0FD1BBDBD230A9DA4172C1D620F176FA193906C7B4EB2ED8A9B25BF8FD472016207DC156EE6085A9B379FD35827B51ACCDF25F24B3FB6F5D28F09E5661469DF05E46F43885F3045240DC5FFDA9325B5ADD246C10402436E52444D465D871B828638457615236F50997DF70DD9D03D14719DD04F27EFD53EE6F2C7FD825FE9DA91EA32BADE624E29972EAE0B59712B0B5D812B9FB3CAD023BDDEEEF98D6FB74948A6153C6F139442DB3B602CAEE61AEFEC3E7DAA6B3B938B6D9F830F34507A0F36E761313AB572C5B6F78D26BDC13737A87676BD69F1A39B57A1F851561737114712316B4959BEC84851BEB5D09F2BA0F4F39C85BBD6BCB98285D3D31404ABF6C6D5245C7B0F8635E9747A43DABE76DDE1EF0C8353182E84E221AA60071A89A0C2B651142B039A99BC3E6CC81578120969E12B45C2247533E109B3953D68DABD45D137E244DBF6DC870B16FB40984664EACA34D93DCA63BF2C1A0AD2180411483AA35A114F8C3A358D7C7884BF88F0C5F11C62C7CCB244ED097A4046B93610722D29A72EAEB22FCDF2CF0825B7CCE5DC79904FFC99AEEF81F524A217A7F89DF345FBA527B508908E88F26A208FA0BD66F1CB7005446818EDF7DE767C6DFCBFBCA065054C785A29C821B240A06875902CA325F262E24DA974431091C4E55250DF041808919B69ECAB373A5279BDC156C73248BBE0C9814CAF2F141CC8D7462E584E49838A4556A75159B35BF30CFC0605CB444334F652DEDEE82369537A760B6690D11C26AABC747FA40123F4876BCFA1A6F6FF23C484D0B25D3C69885983113F5D4D85B4010EDC72A356C381FF1584FB8739DC1291DFC73CC51748D6400B05EF75F71B52E9A67814FD84607D56D18B4C2E7C56F2C3C16207F86197ED64C6D6C85328D35285A82E25AC54C74A3AB020A9808EFA23B3F0A4B1A579A578BFC8170B213AED2169733974194FFD73817AC6B26CAAA270F676EB4DE9DEB6AB885D8AD4CA42B7D101CBCE6A7216348AAADD36F38BBB01E8B8A0DDDF79DB5835994D98A548F79A0DF7B371F7E7159209B72315284B245EF6C61A04EFE5ABBCC663E30200AFDD9826737E58D0A045C94D5F721C174A111E22F19A92039EC2AB8D22C4F4B18AC750455109CBF033D3E3F6756531A9B00F5BCA2D16865988561A92E8EBCE56F649ED90EAB8CB0CD60671B4A0628DA96FBE4327EABE4CEE7D34472D7E11AC42CFA34CCB7F2E88CF2DF5322577210B7334AD878C6ECCA7E41A9A64C11F1BDEDF3AE23272719BFDFD323D3C0BA5B35D664804BD0111E8EEE4CB53D48B7444395884CACEE5A49BD5C43CDE0768D157045B6E54EE16B2408B5F32D1D0A8EDF2302A3225DED51155F47AAB6130413EA8D3608C85EE3648B2E283B5B61437199EF6371AB1818122088D4C9265199DF6174DA16886FBF8ECAA97DE0F2825A43E2E59C9D1C4C60451CFA7BF3B7E184356CF961768D31AF01962CAA73D71757BA5703FEB0B24AEC640D917F7D315CF82745AA69E43821C2805552B226671246DE8A0BCF712BB13B636E1A513292AA3E066D85333EA568B4FC4FC48D41946850A16B83F88BFD5C7DA0DA5690894243142BA2445230049A6412E158B0A7BDBD9B5F000257EB6D3C595A2521E1F88088109BE87EA1F87A30445FC32620B006C8F2F28962B3275C1A4E2CC57B550F3AFF6418C8D8D8667EAD30780366D7D3E1CE98AB0EAF7EC64234A9B624357A471A9EAB33D2269077B07303E8A9952542240B22F90FB56BC0DC32B00449D35B2DB9F2488AABA36C2701744769855184AC7293DFF03F740C34671469842F3CC7BEC2915B4CB8ED12EB2821514901C91741F1018D231F8D166E5727C2EC7C541457D96CF638C9BA43A00B565C6AD5E6CB0E1AD802C3A46C0B006C1984D5B491E6D3C66C1DBB5316B4E69B5A99A54AF2B1854D8BB3C0DD207480D4F8734AB895533F9BE6C191CBF3956113306D813E6F864416CD3C7714A94193B902D247D850E95CBF5621FE610D4668C3BF06BFE5230BB19B96613C1DB680B5627E0DA4A08F6EAF52FB14CB9EC5E82D874BC69F7D6A8B501B1256E2DAE5A3AAF09D5FFFAD8317D0BFF58CAA37D4C1F626585D8B51D08E2F34C468D15EF896831CAE37D24AE154AFB8551549C2A2EABFF42C3DEA01FAA50B910643846986E34D41A45623E27DD3D3EBFB7E80C7B4D7D3B217293C94DAC30C7DDD3C74A66BEB7CC2C1B71EB4CE19F4805B2C565FCE16B2FD6F5F5197AAD05DE5E4C24442FFE59C9810A05A2DF14DB693B5F6BFC15C1D3BFE878BE150A8BAEE8AF12746252D5E49233B451FF92527659EAC32112499899696132965D1CA88C945D1D4805D713C9FB273E304BDE24AE31F2CBCAAC1432B458226CA77B6CD24922CF46DFC925AC93A69DA332A7B1AB108BCAE3A12C93FD6D6EAB2438B555B5A5C489ED683F216EA08C580EC055BCFBCC902BFA72DC1E74B95A12AAE1836D7FDF268B4F173332B40C69246730CAED9D577C610250EE86E4B1A515EC911A4A2D88C729D70ADF460541181B33BC74C3BD8D1093307D47B0C9549D059CEDF19EA6A1FDBD78F33A6CCBC3D74C76F84170CAB42296B0B549410E4BA66BD2CD78BFE858999646C5667171D48172E072923C96832565C13C95E1889C84A3B64DE7DC53BF6ECF6B937B33341FD7C6E6ED561F2D7E346338349D3624C6D3039B20DDB447747087013B0C541DC22B063A3B53B827E88CB3A4B58CC03D2163D0D30E6AB49BD1CFAA53F5A713DC1BEE9E815AF202183F59AC8F818E82B097F6638BB73DDF4A3A5A31713CDA2B3AB41B79F85BD831F8C5CA4B61C84B28F8240F2F0D37C8408E5C5B878B9DF79179F7B85283846569FAE37FD379ECB86E302115C21A8C82527E26D5B454990BC86E2C76221C6B21811A84B9BF2CBD02AAB46488CD76F1AD61365BC855BF6980A11673A963C7D99A1E53BCCFCE013F8D42FBB3F1BB76D22B5EEB5B32F44E805BA065D9BAFAE5EDEBE2D8E3D9C5B303F7F76956E09F7B4F31B99E1DA883EF75E8DC7E517C91BE60424FF7D1B137FBF1AF573CA1837921AB4EA9C2D8A39D40BF7E12422B5385E6AD7AA4BEEF06308DDBBEFDE811DE72064F591BFB4614D23C79E12E0B39A7BFEB653AD3EB8BBD226C97DDD63698337A2D6E1E600E6D9B005A9A3AFD26934CCEB012BDABE74EDB5ED94B265D9B3CDF248604B8DC045580DE27299B616FEADA6CEAE81DD9CC6ED90A1623177744815F836BAB1888879E4E740958A4B2BF337E919BC1758396D6CD92F0D7383F08DF5B4B80B1D2D63FFCB5B3E2D1DF86D3FEC50591778807F7CA8536709721C2A216DF675C3FFEA4D33B9FC9E9C5CC92E24C374B69DAF60CB40C7FC846E8FE74489DC11C77A1785D3CFA00193CDDDF3F78CE12A456B0C4C4C2380CF28B089D1E18D5A221E3CDD99CAA4EBA98F3E493548FA391C24CF5F0F9E8BE257D90E489B959FE70250C4C3687B9688E9870234F00430D415F777C6898659ABEF5C97B9A76FB62B7A778FA29F8726901FDBE41442F8B67879C1DE92026306E2D9E6F1633E0A17919EF6787BB7223A200C97DA54FC86CD3A0674D5CAE48A949D8861CB08AA55E6203F1D2B6B55D099DEEE3A751B43C7A23C4B536AE9E685E84ED4DDDF51610D015057289D155236EBB1D4BEB6FDDAA17186146883257849FF577544BFE0C8A490182F1F91DD8008AC932883615A8EA5706776C1D37E6DFE282BE0E06EF6880ED65BFA5385338B0AA2B2A751D4D9E040D393DD4A58A052F17F0F0B8E40E320CE229D9F425FA0EE317FD1D0D6A0C70D85765550D06614B51B9C5CB0AEB074373A4B36C26BFC00FEC2FCA9FCF7EAC6979BE50431A7A437E544CF232E0FCDFA32CB9030E1AC4A7F424A925196026CFA37D9A1677AB77E5DD141E7D431484C66804A5C57F2AF500B12469B58480B404653D2A5AED207FA6E8D1B89570E2600D0530852C26D287A246C41AA6A72103E9499C3178710DCB7993F8C78E58E0186518F85D56F435EA7AAEB1C5A675F9AFDB419C49DD840EAF2D10B09EF92BA87C9E836BE4BC7C7B5777F9BC2A359A6B0C002BFB9429E903BBAD93CAD7FA84B1D6E346814DA0586A43C0CBCEFC297D68E78D750EB146BA82F2BDCF7C54EC93759C5C6812F73F26845254AEC0A9936CA7E6411020CCA8C283801E2BB360360D77D9D860838582FECC9AA039BEF8DD3A97815DB85ADEEB1F02C9B4E971BD7031B64268E3308BF24A55E5D73644732418E0D0A43471B5536D547B8443352B4F031F28068565DD7690E6A8C99656E448CD72176634C733C4BC4E1F4621A067B7C0C292CD15F8EB0C4322A4D0D2C669DB1F212B758ECB212D1AD901669435081DAB3C16F712E48188FD24CCD957DD8ED066B57193F4D5016F01959EF9694D1DFD3BC6611011CE8B30A6ADE58FDB96EFE8B0D5C4B9C1C4879BA4625F85164213A83568B20E41942A9B9ABACFB76EE2A4CA870E10353EB801EF57FB2623BE16D7AB40FC4ABDC750AC6EC593E888D7C2D09AACA4AAF12C06A6D0AD61EFD41BC272B17B55656D06258591CD5C3B5B8E58A450421BBE6A4E04063B5E1B866246BEC253032561AE29D8CB26E62D4F4FDBC28DB8D338C793756090C407E5A1A124F91562000B4600EDDA4C364F5A1BE440809985AB61768BEB36CCEF31A24F546C5468D02A4714C722BA1098AEE75A623A1A99B6E1E68D90A9ED18A06B0AD08BA3C9E3C7646EF5C83DA31FDC891841C9F81A851EF5B7577FA1DCAD756330ED4940610B5C9841A1AC8ADDA3188BD0723330CB2AA7885B0C591868A24B68206C8DB5190318F2B59F786C3C8036C2AF872C441B1D825319E1FFA67E43C5AB82421756DD708451A1B26D3C87A608D7DE56C9E1A6CD5089882F1ED437DA957233687BCCCE36A3BF23B8686F713008238D67EC05B6EDED0012EAC95069A31C28AF4B0DDC959AB117C67DFB4335D20A2FE0246BC208091E8D7BD3C8798DBEF7D49751F46DC5EF1A26F3D42EC9C038FF37A937FC6478C42C758227F651C79DE7168ECA28CDA04A02EF62B8B80C2BE84CC1DFADDD5628001854AB42BE70741537DC0E9864837393ED843FA30E0CE0224EB87CB9C056A05CCC2CBED2C7BFED5BCE41EA81E02A8961CE456C99EA6F40C9740C7B20469707DC4CD721324C0DE88FDE8832AB147B78FEB47310EE12516B2FA485542D2E8F2F3238AEE7D88A271D89C98A087B54DD68E85C52C24909B72B569052A40C949A2F9C8950AF5F8333D398305788B13DCFA6BAEA82C49454CB7ED5709804EF6483AACB4050B34C4798CC9F7C472EFC7604B99E85E2F2E2026403421C2F66A0AD6DB748ABF118998D53CF2E3ACB1EE5DF43448BBDDB234EB2AC7B7B8E734CC0B7248E8C0628D2830B094E6B596C2009934E9F08D7822346131CBB86F834D7815285E24A52744341D844555F2DFCD610628906C4F4D5DB921473AED20D690419107535946F041DCEEB0AC0BD8EDC609E57480368218CCD108EABA0BD1998CB21E826388D7A4C48AF5CE5258C08DC8CDF48DA99CB983896EDA9430B3914C11EC380CF9F663CF74923910C86F170E6ACF09FFCA786133D552D88A7CFBB756C57234162F896A324677BA3C9F9624BC1A6E3A322282000D931FEF1CBE2F29425B418B77F5AE8C3C074277AD5115668CCA320B5EB846C249CE454457F1F29CC0E071CB76C0E881A188399E89778FA35272995DA4A840606AA3754C09F01E2B5A92E985687084A2360AEBA0E7433D5358D8886B0A98EA9A4911186E47C20F6345EB812C641CBF925A386191F2EE9FBDF8EEDFAB8C99D9663BF4285212AF588AB9C00FAD3C91F5B91C00A2E2343B332D69D4E9CD66A1EDBC8307CC806B63B1D0514D3E129C53F9D70037286D44FA1E01313243C948266568AD03C624200978A0D349ACEF47B66132D1FD7D8B6BA45369A0816B81647C9F20C4EFA6B86858C68D232BCEB010936994D01E669F5ED0E1EA726D8E59D71B45676F877614296D737689F725459337BB646D069FDB6D36F206E77371A8BC430911D3A6EF965F13F9EFA1C6CBF5C00DB0267C14AAC8CF5A01F8D58A940176927BE608963B603D9771C87D88D1F25E0DF509D844AE40199A3674C1925EB0310C86609A0CA3C0B6419D13499C2640117BD2A6C6B40E41020316E79BB83EBCD4B27FF6849B026F1DDFAC81BA8A242E20766E584D261EDC70F7631D1F5C92108B0E561A6E45C964FA34FEFC9DEDBC68F6B9C9CD806ACD090C926B63B86CF6FEF30BC5A322292E3679FEA1E0D2B0B816AA0D643A325312B03EF88FA0239FABF4E9582F201FF676EF828E2A5A97B1516232B86F1F37C4F0937497972A9210A66533D9A64BC254C16F231D438C625E8D3DC50215113BEB12AB25B8363B5E44EB8ABCEF70E792019101D7586CBC322A92A73B6B04B49C34807593B125D213362BFA3C7557B97CB41BED8B53BF7565FF8F5E89B0D14A567958B5AA270A568F545AE631E406435885ED177DFBD8D3C26A6A250064E8582F1CA89C4FDD9EDC3B9AA27A2A4F8BCC75D444FF354B29087A9451E1E96302F3DEB4CD3C230515C00BD78372A9A4F26A365E8F161A50AC5520F0FBB8DB29ECB3B975497C9416E7B73C099FAE10A1EEBE86D24D748DDC74C9C95F991DAA94DB1D3DBE59C436D319DAE730252C15C1CD8E6FDE5A52A2B826DD718327653759452BFB95BE6E428E7C19F90B227D76B86F5FD4C0B8121B91284283D099E0CA94A1B46D7EDEE7694EE08420AFFC112B9207EE79F18F56B377AECD65267836E74216CF746856C9A891EDF4C2592A2C8F5CF5710500C36DA9B9CFF4CFE442DB29DF04513E11FBA8DCAE211D71288F163488BB514A452EC0B99AFE03829DD658C0F267D12BDD854BC2933A09B0061663B44C39528436B66519D82D7B6F3623C5B1413013D9FD5432F045EF0C8D35F1246EE1ED6C114A497C1409A7505B090661E72F28C8892B39A3D1C6A1A7AADC3F1EB7C71A14E636E3F51994F8D6CF47794D033422783857160789EDDD618A3054CCBDA2AFCBE38B54A6254ADAE5DF0DBE6B0A47D99233E1A032F71FB6E32F309FA78F6FAD1E7371FA851EB76DE34CA5D6EB28845CDB4F108FE76D4E325F8E437A888C9CB845F230EA003FA465CE8F71604F240E250E67D0D16929E10138535CEED19D92CC3430F676EE6915AB95900DAA498FD7CDAC322F1620E884796FD77852BD16296D7313D6D13BA3565CA592FF73666DFDD04B047262A7C881C76BA188E8477407D6D6097F65745B1C293C5C74FBFFEC7DBD75F8A9F8F3FFDAD888F5AAC7436FBE69029BEBCFD5F5FB68368E5B793A4B151FF91255F2717DABEE1A49C2C76B36F0BD386DE6F00B4622BEB1F3488D9C53E2144E2FC2FD5322FAF08455E5289EA7690DA82E026051CA2B81059DA28EAED0E0E2ACDA9956C671FF1D47F03CC62DE4450092BE1C16D4FBE053519302D1E2121A2F737696B79B67B05B228B0390815A1B0A9F67D86A8BB9B3D53513497F649FE76546CD6808CB4B0EDB37A3A825F4F2B8049CD233FDA164ADBD2C71B95CFC71A86533ADB286CD666684DFEAE6F82647582D98E00E2112460816176D28F81B9F9C6A64C44BEBC25056C7BB688C86C43B66C138F66C3E9A5368458CC62A840895542CD6F96D86CFF87787E87ACE0388F507E5A507C68823F46FCE313358C6E91C98FBF679F5C06C378FED0C0AB3A53ECD0148E0E756A9CCBDACD425B80A8098943B35145F03F2B9CAD634F17D2A3446739BAC6ED0FE2A43D2BCB55861649A5A25B1E442FD93DB0886D6B3AFA57399DA8803AD6E5442D9A9CB4ED8827C2AF19E879173533737342CA243E726B0036950F03B442DAC70EAF7236A06635A10E2A83079F40485CD25301EE9D1C44F99739CC6E77CEF4CA2827FF1E8B9F452CA996AE5A7AD369B7108F71BBB1A60B6C139FFA0E62F3722CAA43250842AC5E9DC04E1B09A1F67550A0563BA3D9954E3CC0C45A46F56BBB0A8625D249831FB01278C68AAABE113946449BFB6EC94A0DD4BA1D7C6724D7720B8F4884AAF1ED63738A350C6149B06EC186DAA0F938CB09756C92336E468082CCF312273CB7EC79B71B8A76C7136AC7B086018BB5473F63925DAD863937EADEF710975A4E5B554155AAD3E0C55270917A852EFD9D72415EC6763B8085976552FBC4ABE9D32AA4BF48D4DED876786C1341369D86D6127F852492F440D0A4CA7C2B9C1500AC305E745895BB7B0163C83086528CB4D320D69079FC8890908A92E9B91755C6D68162DD9DA9A1B03F6D8B8D84527397804BB5FE180A9ABE4BDF1EC54F4E6961333524B454F1FFCAD0BC0A02311E53F1411A0F480DA1DED730FA5AAAFAB95ABA37FF263B38B41DFDEAE5B97857E256070B4E6106935B2F2D125F91EB6F4FE3B908A79FEC7C5516FE7DE87C4C88BC27C9B5F36A2B3156423ED405057472505D67A2CC6ED89D892C7D66C962C068B53F0017E686CA6A88DF08106A6046BDAB9922B60D850069A4AF6ECB72519002073319A03239CE73AF67B3AD6B70F60DC4E7229CDAC7AAC8599683EE64A0A356BD149A3436192DC449199002ABC000B1E80F1B41150BA540654256A24B9808BB0970DBCC2DAD40739430AED49CF90C64B54E8480B868D7A8138147378170598DD66A5D99DB011C4C27F1E271D6C710ED1E6F80B09102A10125B444C8A896335D44C1988757A123D51145E96130E2FDE7809CA29B10D5165DF102AFBC6C9218D764786FCA7F494F06D983EBDA68E24F1AC52CBB5EB16E0AD083ACB913C41BF22D1332DC0D4BD0872C073850AB3734867A242A41B889BE74666658D0514F5D2E346C51C20E7DED460C0F27956251EC2A4140FE1355213323A36D2F0CAC21462E210677534140148C4CD6770421048540FE3558D424C2D79D0A445E63557B9625902876A6C8C4100F0ECC29B5C32F8B7D9121F6B82227BADBE5214AA4C23A5C0B41FF76991728BFD3B459A1D6BF113E92357E27043B4BC5C63A466BEED15BAAF2324717628AFEA9855A93E01175BCBC4CCDACEE89615CE266C94F7DB4B21ABC9BC5C6BC98992864ED0CD1054D424996BF7B3429D8E412846889F5D99AD92B6AF21A7A158D3730EAF56D1ABC764084FF24422B56912F1F4BBFAFC3A2D60D55AB1C0F42CF2CD480A3DCCFFCEC5647E8EFD1366B4FFA11B6AAA805105243B1176F057C973A7C8B4718FE9680CA52158C55714BEEC5E17EA75B84DEE0835706C783D7159FA572AB046F25ACD4114CBC80CE0AB1A188BDEA118E1DC28926E3FD5FC110ACEC1870A5A043BCA9AE86B04CBFD421ADD832E34D63D99890349C93CC3DDAF9EC5FC5124FC53836299428ED233CE9A4120305C276A25261A53B3B280140F908EABCD48C67A5681849197C058A71F7A8BF450A88C2D41A7B5EEA74C63E16BCA9ECE3E2D1299A9C3ABF0F6FDFBE657006735373DC54D077F688422E9C2F944BAE10694C789DD653E55F77EA742F8F1DC4A4E68996030B15D10792C087CB191D6FD7B1F24F8BCCCA66B7C2513F6764ACB080389802C93095D3804595DC70943A24E512B9EED55A110EC54F44D39F338A2A03872D72552EE8E6253C627313DFFE7105CDB11170F5D1BF41108C7A88794C287A0EB9B7054848D85FBE2CBA9602A94431EA64D0A14A78006EBA8EB027B608FB2907DFECA71A51A16900EFED3D2C23A6F5FDAACCDF93B214DC86036E7002FCED3E9B5D73916DEAF2AF3194A0D76AA2A9BF765C425428698B768D0163182D6B2D4A1A49C9258A4C33307B45BDA5025FBB4ED6ADCA59912F31A56F9525F20C41F816499D6C66AF85E4B4C1158E7BD2E1B73CAAF40525EA7F97419EE06C816B5ECBF49076194A889BABB9909458B9CA5870AEC4D9D5A7C69E3CB94D74A0212C433A4592DEA7971125825C30E0ADF3D8672BBE642E3CF73A120608F3859951AF480C379B1087CD6754288917432B16978B51191D0472444D5B3C017B7B312635EEEA93808B4656845CB476B075197DB401A87BADD571FCFEE777761F3C315918BABC1BB9AEDACCBB93076EED4E87DED4E54A6CA2C10610D026F9DFA090E517043700D54220DA102ED677EEB3502737C7B803E5FA11A1BCEC4FA134C44129462796755369E7E86BA6E8EAE95022BB0C09AA35B9BE53E4D33FDA74B2A6664B4DFABA0DA01ED5E20836B4CF73ACD7F2243514C7537FB2BC425368A0E2EC0EB2BCD5D43C72590251582AB6DEA36B68BBD3DAD50D69D66AC6FB9F2494A3CB22074699D908658DF3F35B1F9AC8D6371D0D90E18B2CEBB90496771F8FA5932A25B7F206E86AA2B84BE30A36356834E285304666EA8690456D007A3E070705468301678BD66F543752A538A6761F88750CA302C803991382FC22471BA0D206E99A01E5800E1D62399C5D3D6D86ECAAD1AECB8E7936358C49A07176FEEA9B4296E771C61B86FCF69BE5E194359193C66C86B19A669589E12AEA880969A54AF44D1AB58999860244B7BA2837360D990CE9F4AD20AA220F38A83339EBD06D9047894C45A4DC8E2F8EA788CF61F784A4AC90553C047F384C9E6BD2F3D6550DAD324C9BD1F9826B8B7D4A06BCED807551E489C696437EB0629558BD129CFAB808F4E905DB357975FFC3D8A2769C503563A7716C9A4F6227A56E501249ADED590A0E077ABB635FF7E8F0E46663C5FE7277EE77FB1CAE0B9F3FF0D9F2CBC3CE4856C88BB0E31D5112608EB599FEE7BA435EC7F46D42C865DDE76DD52CE15C14A9E6B500E154FA140527A1C23FE8347B784AB4D4A69B4E3EA74247E18EF250016A0783586F41A0E1448BB1CFEBCAC45A3895094B7499655DCDE1DCF258DB5A0826DD336C88E6D653D97FFE5F1803018E');
INSERT INTO "frozen" VALUES('acba3b99265637ec1136734fe4b05f5fda0d2fc34e616825b8faf11542907cde','revision',X'7B22666F726D6174223A312C226368616E67655F736574223A32342C22646179223A22323032362D30312D3032222C2273636F7065223A7B7D2C22656E67696E65223A2237613337373031653761353735356135666537616634333130616561663537373736393764373039616439663632396461336564633637373630333630623361222C2270726F6A656374223A2236323132626136323966386636646539663030316135653463636661663134363034623161616431626331643838383835643032316463643731356261396533222C22636174616C6F677565223A2230613166643338353731396634343364353865633862643137613062336263343666336465633664663535363965313334353139323038663136383234636331222C2272756C6573223A2264396561656362626434366435303130346363333037386561613531303266653561396161383330373230376436373938623637626635333430323261376463222C22706F776572223A2233336235373466336236336439356638353565336561353138616462373033643163643632626239383630616538626538363866663231626234396563626336222C22636F756E74223A322C2262697473223A302C226F70656E696E6773223A7B2230223A2233623066373039336638643333643433313662316437383965663261643430653861666163386337653034333135373435393765663231316536336137363661227D7D');
CREATE TABLE hardware_set (
	id TEXT NOT NULL, 
	version INTEGER DEFAULT 1 NOT NULL, 
	name TEXT NOT NULL, 
	notes TEXT, 
	CONSTRAINT pk_hardware_set PRIMARY KEY (id), 
	CONSTRAINT uq_hardware_set_name UNIQUE (name)
);
INSERT INTO "hardware_set" VALUES('ba27b86ef0f34cdca72ffe657642e27c',1,'HS-1',NULL);
CREATE TABLE import_mapping (
	id TEXT NOT NULL, 
	version INTEGER DEFAULT 1 NOT NULL, 
	fingerprint TEXT NOT NULL, 
	name TEXT, 
	mapping TEXT DEFAULT '{}' NOT NULL, 
	CONSTRAINT pk_import_mapping PRIMARY KEY (id), 
	CONSTRAINT uq_import_mapping_fingerprint UNIQUE (fingerprint)
);
INSERT INTO "import_mapping" VALUES('530fd1f000c642db93f148de52a60d23',1,'f','Doors','{"Mark":"opening.mark"}');
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
INSERT INTO "issued_packet" VALUES('ea7826adcc6a454a95343ce937eff301',1,'bbd88ddf3d844fe7a241e7de009833c0','2026-01-02','keeper','case');
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
INSERT INTO "kit_content" VALUES('86702a7b331b476a8be6b33381809d29',1,'2cb6612b6f54471cad41ee4f2842ce46','S-1',2.0);
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
INSERT INTO "leaf" VALUES('98485e32c679482caecccbcf7c6c892e',1,'bbd88ddf3d844fe7a241e7de009833c0',0,'active',NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL);
INSERT INTO "leaf" VALUES('f996c0ac3bd54e04a13c031f4c7ed69e',1,'bbd88ddf3d844fe7a241e7de009833c0',1,'inactive',NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL);
INSERT INTO "leaf" VALUES('75b55f0e9b5446718cdfb25ac1451f33',1,'4541fd3dd4ed4b22b7ace5046bf8ceec',0,'single',NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL);
INSERT INTO "leaf" VALUES('9eec83e0161a4c238adf509004fb65bf',1,'80dfd6ce70484407a472f03ede6f52f2',0,'single',NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL);
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
INSERT INTO "level" VALUES('d614e9f9f25b4c36849d34e89edeef59',2,'5e76b57912f3478a965d33f7b3d4b2e1','1',0,NULL,NULL,NULL,NULL,40,NULL,NULL,NULL,NULL);
INSERT INTO "level" VALUES('4ef90adb7713436fb56d049e0b891b79',1,NULL,'roof',1,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL);
CREATE TABLE lock_point (
	id TEXT NOT NULL, 
	version INTEGER DEFAULT 1 NOT NULL, 
	opening_id TEXT NOT NULL, 
	item_id TEXT, 
	CONSTRAINT pk_lock_point PRIMARY KEY (id), 
	CONSTRAINT fk_lock_point_opening_id FOREIGN KEY(opening_id) REFERENCES opening (id), 
	CONSTRAINT fk_lock_point_item_id FOREIGN KEY(item_id) REFERENCES existing_item (id) DEFERRABLE INITIALLY DEFERRED
);
INSERT INTO "lock_point" VALUES('bbd88ddf3d844fe7a241e7de009833c0',2,'bbd88ddf3d844fe7a241e7de009833c0','ec8f83e6bb354275a445f99bfc638ed6');
INSERT INTO "lock_point" VALUES('4541fd3dd4ed4b22b7ace5046bf8ceec',1,'4541fd3dd4ed4b22b7ace5046bf8ceec',NULL);
INSERT INTO "lock_point" VALUES('80dfd6ce70484407a472f03ede6f52f2',1,'80dfd6ce70484407a472f03ede6f52f2',NULL);
CREATE TABLE office (
	id TEXT NOT NULL, 
	version INTEGER DEFAULT 1 NOT NULL, 
	name TEXT NOT NULL, 
	text TEXT NOT NULL, 
	files TEXT DEFAULT '{}' NOT NULL, 
	CONSTRAINT pk_office PRIMARY KEY (id), 
	CONSTRAINT uq_office_name UNIQUE (name)
);
INSERT INTO "office" VALUES('485c25a416354dd3962a6ca38ac5fe6e',1,'office','format = 1
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
INSERT INTO "open_question" VALUES('d6553157e58f45d4b3db0c289b8766eb',1,'ffd264b3a45943b78bc8750f1ade74a8','bbd88ddf3d844fe7a241e7de009833c0','blank','0012','hand',NULL,'{"before":"LH"}');
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
INSERT INTO "opening" VALUES('bbd88ddf3d844fe7a241e7de009833c0',6,'d614e9f9f25b4c36849d34e89edeef59','ba27b86ef0f34cdca72ffe657642e27c','0012',NULL,NULL,NULL,'LHR',NULL,1,NULL,'key',NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,2021,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,'{}',NULL);
INSERT INTO "opening" VALUES('4541fd3dd4ed4b22b7ace5046bf8ceec',5,'4ef90adb7713436fb56d049e0b891b79',NULL,'9E4',NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,'{}',NULL);
INSERT INTO "opening" VALUES('80dfd6ce70484407a472f03ede6f52f2',2,'4ef90adb7713436fb56d049e0b891b79',NULL,'W7',NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,'{}','walled up');
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
INSERT INTO "opening_fit" VALUES('bbd88ddf3d844fe7a241e7de009833c0',1,'bbd88ddf3d844fe7a241e7de009833c0','case','9f737a60efd3e7749fca3581fe60d2792f2094640b394a4735876f394448155a','program','a5ca83876477bf081178c26357410b22',NULL);
INSERT INTO "opening_fit" VALUES('4541fd3dd4ed4b22b7ace5046bf8ceec',1,'4541fd3dd4ed4b22b7ace5046bf8ceec','c3958cb63914e37cbb2515bb228775eff6bbdf3376a40d5a68374065f72a2b88','4d1a5b681209a263fbb5d5c98b568915f236ffecd8d4f070f0326407c934a9cc','5b5892c93cf9a52766d37aec3b8b262c','84d8a6f668ce7b7e99626905490ca049',NULL);
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
INSERT INTO "own_field" VALUES('9acba2796d2145269f03c00d9d0226b9',1,'existing_item','key_group','Key group','choice','','["AA","BB"]');
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
INSERT INTO "part" VALUES('2cb6612b6f54471cad41ee4f2842ce46',1,'C-1','mortise-cylinder',NULL,NULL,NULL,'EA','12.1','USD',NULL,NULL,NULL,'{}','{}');
INSERT INTO "part" VALUES('7dcbca1a684f4be7b474866f4cbc2bfd',1,'U-1','surface-unit',NULL,NULL,NULL,'EA',NULL,NULL,NULL,NULL,NULL,'{}','{}');
CREATE TABLE person (
	id TEXT NOT NULL, 
	version INTEGER DEFAULT 1 NOT NULL, 
	name TEXT NOT NULL, 
	role TEXT NOT NULL, 
	CONSTRAINT pk_person PRIMARY KEY (id), 
	CONSTRAINT uq_person_name UNIQUE (name)
);
INSERT INTO "person" VALUES('b11e01864ee84da3babf887561c82f97',1,'keeper','specifier');
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
INSERT INTO "placed_unit" VALUES('10f5a434feb0481f8f88418114443dc9',1,'bbd88ddf3d844fe7a241e7de009833c0','bbd88ddf3d844fe7a241e7de009833c0','active','inside','above',20.0,1100.0);
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
INSERT INTO "project" VALUES('a69b62cf33cf4263acf0ddceb66d6e54',1,'Saved yard','2026-11-29T10:54:05+00:00','mm','mm','{"time_zone":"Etc/UTC"}');
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
INSERT INTO "revision" VALUES('c033b347f85f4bf1bda3b88153c182e9',1,'A','2026-11-29T10:54:07+00:00','keeper','kept','{}','acba3b99265637ec1136734fe4b05f5fda0d2fc34e616825b8faf11542907cde');
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
INSERT INTO "route" VALUES('412f5c706a864748ad0baacd1a216fdd',1,'bbd88ddf3d844fe7a241e7de009833c0','e935e7117b0342ad8f1557d37cfda2c3',6.0,1);
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
INSERT INTO "run" VALUES('f30ddf51b7f742bdbb6980506357b496',1,'ace647e342094d31a5805b6067a7bccb',NULL,'supply','J1',NULL,NULL,NULL,NULL,NULL,NULL);
INSERT INTO "run" VALUES('c3be24c3a65b4e0cb7cc146c07f3cde7',1,'ace647e342094d31a5805b6067a7bccb','bbd88ddf3d844fe7a241e7de009833c0','J1','bbd88ddf3d844fe7a241e7de009833c0',4.0,NULL,'18 AWG','solid',NULL,NULL);
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
INSERT INTO "set_line" VALUES('42458699c0134424a7fd9546cdfb31c4',1,'ba27b86ef0f34cdca72ffe657642e27c','unit','U-1',1.0);
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
	standby_hours FLOAT, 
	temperature_c FLOAT, 
	notes TEXT, 
	CONSTRAINT pk_supply PRIMARY KEY (id), 
	CONSTRAINT uq_supply_name UNIQUE (name), 
	CONSTRAINT fk_supply_level_id FOREIGN KEY(level_id) REFERENCES level (id)
);
INSERT INTO "supply" VALUES('e935e7117b0342ad8f1557d37cfda2c3',1,NULL,'Closet',NULL,2.5,NULL,NULL,NULL,'laid',NULL,NULL,NULL,NULL,NULL);
CREATE TABLE table_digest (
	name TEXT NOT NULL, 
	digest TEXT NOT NULL, 
	rows INTEGER NOT NULL, 
	change_set INTEGER NOT NULL, 
	CONSTRAINT pk_table_digest PRIMARY KEY (name)
);
INSERT INTO "table_digest" VALUES('project','89a58f1439583e1e',1,0);
INSERT INTO "table_digest" VALUES('part','bb0be253f57435f8',2,1);
INSERT INTO "table_digest" VALUES('kit_content','e0a6cc22397ff8e8',1,1);
INSERT INTO "table_digest" VALUES('building','bdab7950855e0ffa',1,19);
INSERT INTO "table_digest" VALUES('level','2710146118dec7d6',2,20);
INSERT INTO "table_digest" VALUES('opening','1175e3e61353dea0',3,31);
INSERT INTO "table_digest" VALUES('leaf','db0a2dae6bd7ac64',4,14);
INSERT INTO "table_digest" VALUES('lock_point','4f64f5de6e7b07e0',3,14);
INSERT INTO "table_digest" VALUES('existing_item','1f9a8deea6143d17',1,8);
INSERT INTO "table_digest" VALUES('chosen_part','f28a2a5ebdd8a415',1,5);
INSERT INTO "table_digest" VALUES('placed_unit','6a4404218babb3a6',1,6);
INSERT INTO "table_digest" VALUES('own_field','0d036bf761e514dc',1,7);
INSERT INTO "table_digest" VALUES('import_mapping','c22cd0f017ff910d',1,9);
INSERT INTO "table_digest" VALUES('opening_fit','622603a01af9ae6a',2,24);
INSERT INTO "table_digest" VALUES('supply','7475d52ea3397f77',1,11);
INSERT INTO "table_digest" VALUES('circuit','f6d1e3aebbbb4e8c',1,11);
INSERT INTO "table_digest" VALUES('run','34a0e547a5341339',2,11);
INSERT INTO "table_digest" VALUES('route','8c9ef1b4a21a1d05',1,11);
INSERT INTO "table_digest" VALUES('hardware_set','87f64cd54f51d660',1,12);
INSERT INTO "table_digest" VALUES('set_line','88d172db6ef3903e',1,12);
INSERT INTO "table_digest" VALUES('waiver','8cf69edd86b62b2f',1,12);
INSERT INTO "table_digest" VALUES('issued_packet','c624cc0f96604f47',1,12);
INSERT INTO "table_digest" VALUES('assigned_part','ec8d3171becaee94',1,13);
INSERT INTO "table_digest" VALUES('delivery','4af525d975e82247',1,16);
INSERT INTO "table_digest" VALUES('open_question','a4a0c88250cd218f',1,16);
INSERT INTO "table_digest" VALUES('transmittal','97eeac7a330979be',1,17);
INSERT INTO "table_digest" VALUES('office','88ce301e775a2662',1,18);
INSERT INTO "table_digest" VALUES('person','3393aac74acadfc6',1,22);
INSERT INTO "table_digest" VALUES('attachment','1803bd956bcdf97c',1,23);
INSERT INTO "table_digest" VALUES('revision','dd5a9a38fb079c73',1,25);
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
INSERT INTO "transmittal" VALUES('6431cb4fd13a4e8bb9f91f4588934e1b',1,1,'2026-01-02','keeper','Architect','for approval',NULL,'{"schedule.pdf":{"hash":"c7833160c63da29c02cf51b6bb898cf53137ae144cebfe2d8ecece1de0d67699","revision":"","size":14}}');
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
INSERT INTO "waiver" VALUES('80aab909db5e4cf59100bbbf488fa2a9',1,'bbd88ddf3d844fe7a241e7de009833c0','hand-known','','opening','f','keeper','seen','2026-01-02',NULL);
CREATE INDEX ix_change_set_target ON change_set (target);
CREATE INDEX ix_change_set_who_number ON change_set (who, number);
CREATE INDEX ix_level_building_id ON level (building_id);
CREATE INDEX ix_change_target_target_change_set ON change_target (target, change_set);
CREATE INDEX ix_change_entry_row_id_change_set ON change_entry (row_id, change_set);
CREATE INDEX ix_change_entry_opening_id_change_set ON change_entry (opening_id, change_set);
CREATE INDEX ix_opening_set_id ON opening (set_id);
CREATE INDEX ix_opening_level_id ON opening (level_id);
CREATE INDEX ix_supply_level_id ON supply (level_id);
CREATE INDEX ix_leaf_opening_id ON leaf (opening_id);
CREATE INDEX ix_existing_item_opening_id ON existing_item (opening_id);
CREATE INDEX ix_open_question_delivery_id ON open_question (delivery_id);
CREATE INDEX ix_open_question_opening_id ON open_question (opening_id);
CREATE INDEX ix_waiver_opening_id ON waiver (opening_id);
CREATE INDEX ix_attachment_opening_id ON attachment (opening_id);
CREATE INDEX ix_attachment_row_id ON attachment (row_id);
CREATE INDEX ix_lock_point_item_id ON lock_point (item_id);
CREATE INDEX ix_lock_point_opening_id ON lock_point (opening_id);
CREATE INDEX ix_run_circuit_id ON run (circuit_id);
CREATE INDEX ix_run_opening_id ON run (opening_id);
CREATE INDEX ix_chosen_part_opening_id ON chosen_part (opening_id);
CREATE INDEX ix_placed_unit_opening_id ON placed_unit (opening_id);
CREATE INDEX ix_assigned_part_lock_point_id ON assigned_part (lock_point_id);
CREATE INDEX ix_assigned_part_opening_id ON assigned_part (opening_id);
CREATE INDEX ix_opening_fit_opening_id ON opening_fit (opening_id);
COMMIT;
