BEGIN TRANSACTION;
CREATE TABLE alembic_version (version_num VARCHAR(32) NOT NULL, CONSTRAINT alembic_version_pkc PRIMARY KEY (version_num));
INSERT INTO "alembic_version" VALUES('0020');
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
INSERT INTO "assigned_part" VALUES('013e2ec01a394ec0a775b21c5ef9060a',1,'0da0698201054b2e8c6460430f121ca2','0da0698201054b2e8c6460430f121ca2','cylinder','C-1',1,1.0,'by-hand','SN-1',NULL,'planned');
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
INSERT INTO "attachment" VALUES('333e06e9b2d641a5b2bce1e33faefbfe',1,'opening','0da0698201054b2e8c6460430f121ca2','0da0698201054b2e8c6460430f121ca2','508b7b1f113fdf173660d2b3dace45039a6d28f00ee27382c04c93af8213e4c9','inside.txt','Inside',NULL,0);
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
INSERT INTO "building" VALUES('2592f37c98564a8291d1db378ecbf9dd',2,'Mill',NULL,NULL,'B',NULL,NULL,0,NULL,NULL);
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
INSERT INTO "change_entry" VALUES(1,0,'part','15d25e960e1c43cab691845496d5303e',NULL,'insert',NULL,'{"currency":"USD","id":"15d25e960e1c43cab691845496d5303e","kind":"mortise-cylinder","list_price":"12.1","number":"C-1","unit":"EA","version":1}','test');
INSERT INTO "change_entry" VALUES(1,1,'part','283acfc1f0904b0a83504ce278c4be9e',NULL,'insert',NULL,'{"id":"283acfc1f0904b0a83504ce278c4be9e","kind":"surface-unit","number":"U-1","unit":"EA","version":1}','test');
INSERT INTO "change_entry" VALUES(1,2,'kit_content','5e75fd7cb68740f28a9b7840509f000d',NULL,'insert',NULL,'{"id":"5e75fd7cb68740f28a9b7840509f000d","number":"S-1","part_id":"15d25e960e1c43cab691845496d5303e","quantity":2.0,"version":1}','test');
INSERT INTO "change_entry" VALUES(2,0,'building','2592f37c98564a8291d1db378ecbf9dd',NULL,'insert',NULL,'{"id":"2592f37c98564a8291d1db378ecbf9dd","name":"Mill","version":1}',NULL);
INSERT INTO "change_entry" VALUES(2,1,'level','6e688cb345d04aefb95c8f59218d4d09',NULL,'insert',NULL,'{"building_id":"2592f37c98564a8291d1db378ecbf9dd","id":"6e688cb345d04aefb95c8f59218d4d09","name":"1","sort":0,"version":1}',NULL);
INSERT INTO "change_entry" VALUES(2,2,'opening','0da0698201054b2e8c6460430f121ca2','0da0698201054b2e8c6460430f121ca2','insert',NULL,'{"id":"0da0698201054b2e8c6460430f121ca2","level_id":"6e688cb345d04aefb95c8f59218d4d09","mark":"0012","stair":true,"version":1}','added by keeper');
INSERT INTO "change_entry" VALUES(2,3,'leaf','16b8797cc94842178fb82f3b567b9bc3','0da0698201054b2e8c6460430f121ca2','insert',NULL,'{"id":"16b8797cc94842178fb82f3b567b9bc3","opening_id":"0da0698201054b2e8c6460430f121ca2","ordinal":0,"position":"active","version":1}','added by keeper');
INSERT INTO "change_entry" VALUES(2,4,'leaf','852e9780efe04eed9a34ce99d9ff78d0','0da0698201054b2e8c6460430f121ca2','insert',NULL,'{"id":"852e9780efe04eed9a34ce99d9ff78d0","opening_id":"0da0698201054b2e8c6460430f121ca2","ordinal":1,"position":"inactive","version":1}','added by keeper');
INSERT INTO "change_entry" VALUES(2,5,'lock_point','0da0698201054b2e8c6460430f121ca2','0da0698201054b2e8c6460430f121ca2','insert',NULL,'{"id":"0da0698201054b2e8c6460430f121ca2","opening_id":"0da0698201054b2e8c6460430f121ca2","version":1}',NULL);
INSERT INTO "change_entry" VALUES(3,0,'level','586e433dad4048539f510d569ddc95c2',NULL,'insert',NULL,'{"id":"586e433dad4048539f510d569ddc95c2","name":"roof","sort":1,"version":1}',NULL);
INSERT INTO "change_entry" VALUES(3,1,'opening','140d737f121c467b9f982877d1b667d8','140d737f121c467b9f982877d1b667d8','insert',NULL,'{"id":"140d737f121c467b9f982877d1b667d8","level_id":"586e433dad4048539f510d569ddc95c2","mark":"9E4","version":1}','added by keeper');
INSERT INTO "change_entry" VALUES(3,2,'leaf','d0edd681c404491aa5836ac1033d219e','140d737f121c467b9f982877d1b667d8','insert',NULL,'{"id":"d0edd681c404491aa5836ac1033d219e","opening_id":"140d737f121c467b9f982877d1b667d8","ordinal":0,"position":"single","version":1}','added by keeper');
INSERT INTO "change_entry" VALUES(3,3,'lock_point','140d737f121c467b9f982877d1b667d8','140d737f121c467b9f982877d1b667d8','insert',NULL,'{"id":"140d737f121c467b9f982877d1b667d8","opening_id":"140d737f121c467b9f982877d1b667d8","version":1}',NULL);
INSERT INTO "change_entry" VALUES(4,0,'existing_item','0429ae9c8d4f4b2c8a013a2cd9efc2f8','0da0698201054b2e8c6460430f121ca2','insert',NULL,'{"backset_mm":69.85,"id":"0429ae9c8d4f4b2c8a013a2cd9efc2f8","kind":"lock","opening_id":"0da0698201054b2e8c6460430f121ca2","ordinal":0,"version":1}','added by keeper');
INSERT INTO "change_entry" VALUES(4,1,'lock_point','0da0698201054b2e8c6460430f121ca2','0da0698201054b2e8c6460430f121ca2','update','{"item_id":null}','{"item_id":"0429ae9c8d4f4b2c8a013a2cd9efc2f8"}',NULL);
INSERT INTO "change_entry" VALUES(5,0,'chosen_part','0295e09dd84549b79283e6bbc5ae875c','0da0698201054b2e8c6460430f121ca2','insert',NULL,'{"id":"0295e09dd84549b79283e6bbc5ae875c","lock_point_id":"0da0698201054b2e8c6460430f121ca2","opening_id":"0da0698201054b2e8c6460430f121ca2","part":"C-1","quantity":1.0,"role":"cylinder","version":1}',NULL);
INSERT INTO "change_entry" VALUES(6,0,'placed_unit','666da402f6ff4b9fbae32319a6f103ac','0da0698201054b2e8c6460430f121ca2','insert',NULL,'{"face":"inside","id":"666da402f6ff4b9fbae32319a6f103ac","leaf":"active","lock_point_id":"0da0698201054b2e8c6460430f121ca2","opening_id":"0da0698201054b2e8c6460430f121ca2","pattern":"above","version":1,"x_mm":20.0,"y_mm":1100.0}',NULL);
INSERT INTO "change_entry" VALUES(7,0,'own_field','24d07f92ebd64899973ed3bf696c1ebb',NULL,'insert',NULL,'{"choices":["AA","BB"],"entity":"existing_item","id":"24d07f92ebd64899973ed3bf696c1ebb","kind":"choice","label":"Key group","name":"key_group","unit":"","version":1}',NULL);
INSERT INTO "change_entry" VALUES(8,0,'existing_item','0429ae9c8d4f4b2c8a013a2cd9efc2f8','0da0698201054b2e8c6460430f121ca2','update','{"extra":{}}','{"extra":{"key_group":"AA"}}','edited by keeper');
INSERT INTO "change_entry" VALUES(9,0,'import_mapping','c5bf0a121aec4cfb8fba1fb5dea4faef',NULL,'insert',NULL,'{"fingerprint":"f","id":"c5bf0a121aec4cfb8fba1fb5dea4faef","mapping":{"Mark":"opening.mark"},"name":"Doors","version":1}',NULL);
INSERT INTO "change_entry" VALUES(10,0,'opening_fit','0da0698201054b2e8c6460430f121ca2','0da0698201054b2e8c6460430f121ca2','insert',NULL,'{"engine":"program","facts_read":"a5ca83876477bf081178c26357410b22","fit_key":"9f737a60efd3e7749fca3581fe60d2792f2094640b394a4735876f394448155a","id":"0da0698201054b2e8c6460430f121ca2","input_key":"case","opening_id":"0da0698201054b2e8c6460430f121ca2","version":1}',NULL);
INSERT INTO "change_entry" VALUES(11,0,'supply','c1c88c713e764e8385eb3f605a3491b0',NULL,'insert',NULL,'{"id":"c1c88c713e764e8385eb3f605a3491b0","name":"Closet","use":"laid","version":1,"x_m":2.5}',NULL);
INSERT INTO "change_entry" VALUES(11,1,'circuit','e7748affed4e47b4b2b8b04832a0a9c4',NULL,'insert',NULL,'{"alarm":"drops","id":"e7748affed4e47b4b2b8b04832a0a9c4","name":"A","supply_id":"c1c88c713e764e8385eb3f605a3491b0","version":1}',NULL);
INSERT INTO "change_entry" VALUES(11,2,'run','d6c2145b3bef47ddbc028453c905e9d9',NULL,'insert',NULL,'{"circuit_id":"e7748affed4e47b4b2b8b04832a0a9c4","from_node":"supply","id":"d6c2145b3bef47ddbc028453c905e9d9","to_node":"J1","version":1}',NULL);
INSERT INTO "change_entry" VALUES(11,3,'run','c533561558314afa8e602e1f3550559f','0da0698201054b2e8c6460430f121ca2','insert',NULL,'{"circuit_id":"e7748affed4e47b4b2b8b04832a0a9c4","from_node":"J1","gauge":"18 AWG","id":"c533561558314afa8e602e1f3550559f","length_m":4.0,"opening_id":"0da0698201054b2e8c6460430f121ca2","stranding":"solid","to_node":"0da0698201054b2e8c6460430f121ca2","version":1}',NULL);
INSERT INTO "change_entry" VALUES(11,4,'route','a6b1ba6a4e9d426f926a1aa6608208c7','0da0698201054b2e8c6460430f121ca2','insert',NULL,'{"id":"a6b1ba6a4e9d426f926a1aa6608208c7","length_m":6.0,"opening_id":"0da0698201054b2e8c6460430f121ca2","pinned":true,"supply_id":"c1c88c713e764e8385eb3f605a3491b0","version":1}',NULL);
INSERT INTO "change_entry" VALUES(12,0,'hardware_set','56161b6fd65e4607a7dbf9ffb7263c61',NULL,'insert',NULL,'{"id":"56161b6fd65e4607a7dbf9ffb7263c61","name":"HS-1","version":1}',NULL);
INSERT INTO "change_entry" VALUES(12,1,'set_line','43bf4d78f25441f9aa2d7526e27d3fae',NULL,'insert',NULL,'{"id":"43bf4d78f25441f9aa2d7526e27d3fae","part":"U-1","quantity":1.0,"role":"unit","set_id":"56161b6fd65e4607a7dbf9ffb7263c61","version":1}',NULL);
INSERT INTO "change_entry" VALUES(12,2,'opening','0da0698201054b2e8c6460430f121ca2','0da0698201054b2e8c6460430f121ca2','update','{"set_id":null}','{"set_id":"56161b6fd65e4607a7dbf9ffb7263c61"}',NULL);
INSERT INTO "change_entry" VALUES(12,3,'waiver','54d750dada2046b29610a46a35cbf8ae','0da0698201054b2e8c6460430f121ca2','insert',NULL,'{"about":"","facts":"f","given_on":"2026-01-02","id":"54d750dada2046b29610a46a35cbf8ae","opening_id":"0da0698201054b2e8c6460430f121ca2","person":"keeper","reason":"seen","rule":"hand-known","scope":"opening","version":1}',NULL);
INSERT INTO "change_entry" VALUES(12,4,'issued_packet','8afbb70a0df24f68a9ba1222e12a0969','0da0698201054b2e8c6460430f121ca2','insert',NULL,'{"at":"2026-01-02","by":"keeper","id":"8afbb70a0df24f68a9ba1222e12a0969","opening_id":"0da0698201054b2e8c6460430f121ca2","shown_key":"case","version":1}',NULL);
INSERT INTO "change_entry" VALUES(13,0,'assigned_part','013e2ec01a394ec0a775b21c5ef9060a','0da0698201054b2e8c6460430f121ca2','insert',NULL,'{"id":"013e2ec01a394ec0a775b21c5ef9060a","lock_point_id":"0da0698201054b2e8c6460430f121ca2","opening_id":"0da0698201054b2e8c6460430f121ca2","part":"C-1","piece":1,"quantity":1.0,"role":"cylinder","serial":"SN-1","source":"by-hand","state":"planned","version":1}',NULL);
INSERT INTO "change_entry" VALUES(14,0,'opening','10d444cabb8c48a7920f9242fb11b6b8','10d444cabb8c48a7920f9242fb11b6b8','insert',NULL,'{"id":"10d444cabb8c48a7920f9242fb11b6b8","level_id":"586e433dad4048539f510d569ddc95c2","mark":"W7","version":1}','added by keeper');
INSERT INTO "change_entry" VALUES(14,1,'leaf','86950321d83f46a5b480da8a9a3e3090','10d444cabb8c48a7920f9242fb11b6b8','insert',NULL,'{"id":"86950321d83f46a5b480da8a9a3e3090","opening_id":"10d444cabb8c48a7920f9242fb11b6b8","ordinal":0,"position":"single","version":1}','added by keeper');
INSERT INTO "change_entry" VALUES(14,2,'lock_point','10d444cabb8c48a7920f9242fb11b6b8','10d444cabb8c48a7920f9242fb11b6b8','insert',NULL,'{"id":"10d444cabb8c48a7920f9242fb11b6b8","opening_id":"10d444cabb8c48a7920f9242fb11b6b8","version":1}',NULL);
INSERT INTO "change_entry" VALUES(15,0,'opening','10d444cabb8c48a7920f9242fb11b6b8','10d444cabb8c48a7920f9242fb11b6b8','update','{"retired":null}','{"retired":"walled up"}',NULL);
INSERT INTO "change_entry" VALUES(16,0,'delivery','3e63e593bb614af8a5a0230021e12da1',NULL,'insert',NULL,'{"at":"2026-01-02","file":"doors.csv","id":"3e63e593bb614af8a5a0230021e12da1","key":"f","number":1,"person":"keeper","told":{"new":2},"version":1}',NULL);
INSERT INTO "change_entry" VALUES(16,1,'open_question','a34665c9189641cb8a1805f90279110d','0da0698201054b2e8c6460430f121ca2','insert',NULL,'{"content":{"before":"LH"},"delivery_id":"3e63e593bb614af8a5a0230021e12da1","fact":"hand","id":"a34665c9189641cb8a1805f90279110d","kind":"blank","mark":"0012","opening_id":"0da0698201054b2e8c6460430f121ca2","version":1}',NULL);
INSERT INTO "change_entry" VALUES(17,0,'transmittal','31fa2612856c47379b22f641d9005a7d',NULL,'insert',NULL,'{"at":"2026-01-02","files":{"schedule.pdf":{"hash":"c7833160c63da29c02cf51b6bb898cf53137ae144cebfe2d8ecece1de0d67699","revision":"","size":14}},"id":"31fa2612856c47379b22f641d9005a7d","number":1,"person":"keeper","purpose":"for approval","recipient":"Architect","version":1}',NULL);
INSERT INTO "change_entry" VALUES(18,0,'office','ad6fa718cd784af5af84eaacd28441b3',NULL,'insert',NULL,'{"id":"ad6fa718cd784af5af84eaacd28441b3","name":"office","text":"format = 1\npaper = \"a4\"\n","version":1}',NULL);
INSERT INTO "change_entry" VALUES(19,0,'building','2592f37c98564a8291d1db378ecbf9dd',NULL,'update','{"occupancy_group":null,"sprinkler":null}','{"occupancy_group":"B","sprinkler":false}','edited by keeper');
INSERT INTO "change_entry" VALUES(20,0,'level','6e688cb345d04aefb95c8f59218d4d09',NULL,'update','{"occupant_load":null}','{"occupant_load":40}','edited by keeper');
INSERT INTO "change_entry" VALUES(21,0,'opening','0da0698201054b2e8c6460430f121ca2','0da0698201054b2e8c6460430f121ca2','update','{"code_edition":null,"egress_toward":null}','{"code_edition":2021,"egress_toward":"key"}','edited by keeper');
INSERT INTO "change_entry" VALUES(22,0,'person','d80699575440407d8c25a8dc5b35da06',NULL,'insert',NULL,'{"id":"d80699575440407d8c25a8dc5b35da06","name":"keeper","role":"specifier","version":1}',NULL);
INSERT INTO "change_entry" VALUES(23,0,'attachment','333e06e9b2d641a5b2bce1e33faefbfe','0da0698201054b2e8c6460430f121ca2','insert',NULL,'{"blob":"508b7b1f113fdf173660d2b3dace45039a6d28f00ee27382c04c93af8213e4c9","entity":"opening","id":"333e06e9b2d641a5b2bce1e33faefbfe","name":"inside.txt","opening_id":"0da0698201054b2e8c6460430f121ca2","ordinal":0,"row_id":"0da0698201054b2e8c6460430f121ca2","title":"Inside","version":1}','file inside.txt');
INSERT INTO "change_entry" VALUES(24,0,'opening_fit','140d737f121c467b9f982877d1b667d8','140d737f121c467b9f982877d1b667d8','insert',NULL,'{"engine":"fc4b715b1aafa8eebc4b1109ae148987","facts_read":"84d8a6f668ce7b7e99626905490ca049","fit_key":"4d1a5b681209a263fbb5d5c98b568915f236ffecd8d4f070f0326407c934a9cc","id":"140d737f121c467b9f982877d1b667d8","input_key":"c3958cb63914e37cbb2515bb228775eff6bbdf3376a40d5a68374065f72a2b88","opening_id":"140d737f121c467b9f982877d1b667d8","version":1}',NULL);
INSERT INTO "change_entry" VALUES(25,0,'revision','3c8811ca7e6e40bdaac51772b487e149',NULL,'insert',NULL,'{"at":"2026-11-29T22:21:45+00:00","id":"3c8811ca7e6e40bdaac51772b487e149","letter":"A","person":"keeper","purpose":"kept","root":"a4a053b1dc856f2683c6518088a7b88ac638ae0ae252eccf91647f32243c7bd0","version":1}',NULL);
INSERT INTO "change_entry" VALUES(26,0,'opening','0da0698201054b2e8c6460430f121ca2','0da0698201054b2e8c6460430f121ca2','update','{"hand":null}','{"hand":"LHR"}','edited by keeper');
INSERT INTO "change_entry" VALUES(27,0,'opening','0da0698201054b2e8c6460430f121ca2','0da0698201054b2e8c6460430f121ca2','update','{"hand":"LHR"}','{"hand":"RH"}','edited by keeper');
INSERT INTO "change_entry" VALUES(28,0,'opening','0da0698201054b2e8c6460430f121ca2','0da0698201054b2e8c6460430f121ca2','update','{"hand":"RH"}','{"hand":"LHR"}',NULL);
INSERT INTO "change_entry" VALUES(29,0,'opening','140d737f121c467b9f982877d1b667d8','140d737f121c467b9f982877d1b667d8','update','{"hand":null}','{"hand":"LH"}','edited by keeper');
INSERT INTO "change_entry" VALUES(30,0,'opening','140d737f121c467b9f982877d1b667d8','140d737f121c467b9f982877d1b667d8','update','{"hand":"LH"}','{"hand":"RH"}','edited by keeper');
INSERT INTO "change_entry" VALUES(31,0,'opening','140d737f121c467b9f982877d1b667d8','140d737f121c467b9f982877d1b667d8','update','{"hand":"RH"}','{"hand":"LH"}',NULL);
INSERT INTO "change_entry" VALUES(31,1,'opening','140d737f121c467b9f982877d1b667d8','140d737f121c467b9f982877d1b667d8','update','{"hand":"LH"}','{"hand":null}',NULL);
CREATE TABLE change_reference (
	row_id TEXT NOT NULL, 
	change_set INTEGER NOT NULL, 
	CONSTRAINT pk_change_reference PRIMARY KEY (row_id, change_set), 
	CONSTRAINT fk_change_reference_change_set FOREIGN KEY(change_set) REFERENCES change_set (number)
);
INSERT INTO "change_reference" VALUES('15d25e960e1c43cab691845496d5303e',1);
INSERT INTO "change_reference" VALUES('2592f37c98564a8291d1db378ecbf9dd',2);
INSERT INTO "change_reference" VALUES('6e688cb345d04aefb95c8f59218d4d09',2);
INSERT INTO "change_reference" VALUES('586e433dad4048539f510d569ddc95c2',3);
INSERT INTO "change_reference" VALUES('0429ae9c8d4f4b2c8a013a2cd9efc2f8',4);
INSERT INTO "change_reference" VALUES('0da0698201054b2e8c6460430f121ca2',5);
INSERT INTO "change_reference" VALUES('0da0698201054b2e8c6460430f121ca2',6);
INSERT INTO "change_reference" VALUES('0da0698201054b2e8c6460430f121ca2',10);
INSERT INTO "change_reference" VALUES('c1c88c713e764e8385eb3f605a3491b0',11);
INSERT INTO "change_reference" VALUES('e7748affed4e47b4b2b8b04832a0a9c4',11);
INSERT INTO "change_reference" VALUES('56161b6fd65e4607a7dbf9ffb7263c61',12);
INSERT INTO "change_reference" VALUES('0da0698201054b2e8c6460430f121ca2',13);
INSERT INTO "change_reference" VALUES('586e433dad4048539f510d569ddc95c2',14);
INSERT INTO "change_reference" VALUES('3e63e593bb614af8a5a0230021e12da1',16);
INSERT INTO "change_reference" VALUES('0da0698201054b2e8c6460430f121ca2',23);
INSERT INTO "change_reference" VALUES('140d737f121c467b9f982877d1b667d8',24);
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
INSERT INTO "change_set" VALUES(1,'8bf620d7ee5d44d4942eddc78eb52fa3',0,'2026-11-29T22:21:44.634+00:00','keeper','vm','cd707fc26a124e8e9ba5405b3b6c3da7','import-catalogue','Catalogue','edit',NULL,3,'5bfda533bc563bc2bb5b47b50e9975d16b206a6f188c3ba83717491f71a15d06','f20c042b363003aec0ffa5e172eab914b8321fbe921e4b8d5085842b60d6f04a');
INSERT INTO "change_set" VALUES(2,'9b6700506a884e5183be53e3a33ba0ce',1,'2026-11-29T22:21:44.687+00:00','keeper','vm','cd707fc26a124e8e9ba5405b3b6c3da7','add-opening','Add opening 0012','edit',NULL,6,'39e867313b518ff50e96330ebfebe027a8c0e32d3ccdfd51d099bfabf72639c6','4434072ebfb756841cdc20617b6904d8e0cd96dea07633a12dc740ef7484780b');
INSERT INTO "change_set" VALUES(3,'e5f89a5bea1d452a8c7bfb5676456159',2,'2026-11-29T22:21:44.717+00:00','keeper','vm','cd707fc26a124e8e9ba5405b3b6c3da7','add-opening','Add opening 9E4','edit',NULL,4,'0e46ebdde35ae292c613e1e17f0e98afae7be17e332f566c082b936b3e35f0e4','9bd2be783fa2546d77979dd7db5f88c37048c517149781437c17f5ecaf2c0916');
INSERT INTO "change_set" VALUES(4,'efe1e39e0a2546e68962c5a8be6cb4dc',3,'2026-11-29T22:21:44.750+00:00','keeper','vm','cd707fc26a124e8e9ba5405b3b6c3da7','add-item','Add existing item lock to 0012','edit',NULL,2,'3eda8657fe5480574c3019c169f3da4afd31965e33c902f28786db5626746cc7','84417a3446fc1500c51edde2dbbca039708ebe508fa966d0f4543d104d608699');
INSERT INTO "change_set" VALUES(5,'f1ebbf61788947fda3a7448c182fd0d4',4,'2026-11-29T22:21:44.812+00:00','keeper','vm','cd707fc26a124e8e9ba5405b3b6c3da7','choose-part','Choose C-1 as cylinder of 0012','edit',NULL,1,'13d8e850305354c1bdb6ddfdeed4cc05221f04b86b0c8f3d95da9bb6050467b5','0240c72b50a27b3979cab0589494867a70741d1b08f8f116a56927649451d531');
INSERT INTO "change_set" VALUES(6,'0dad9ad7faf449c89c7f674568becc22',5,'2026-11-29T22:21:44.834+00:00','keeper','vm','cd707fc26a124e8e9ba5405b3b6c3da7','place-unit','Place the unit of 0012','edit',NULL,1,'e54978b73a93411bbbfe00c0238700fa902300d16bf1cb4fa5d683b42ee3fc59','0d5fd908d8f91386812658915173c45f8d61b034bb3ab93b67c1e9f7e81522a7');
INSERT INTO "change_set" VALUES(7,'385b04848b204890bbaf16523ab3664f',6,'2026-11-29T22:21:44.855+00:00','keeper','vm','cd707fc26a124e8e9ba5405b3b6c3da7','define-field','Define field Key group','edit',NULL,1,'7bd8024be70010cd36f95814a7ebfb73431d7c3bd1e138abd5ac1fe9de5ce22d','82eb5b240328b13248128500f62415442583c4f10d9644f5c575742f48c9e090');
INSERT INTO "change_set" VALUES(8,'c97838ac881f4586a8e82f39c92e4db9',7,'2026-11-29T22:21:44.872+00:00','keeper','vm','cd707fc26a124e8e9ba5405b3b6c3da7','set-own-value','Set Key group','edit',NULL,1,'cc101bce01f582ffc34e60e4b252eaa84572e5f44b5b22b0e2404fa6b0d88083','bf8f2c6be952725cb5a4281f89f9c79fc6879dc4c43b2b96dd4d18dd51868de5');
INSERT INTO "change_set" VALUES(9,'19c4b76624964479b02649deca258021',8,'2026-11-29T22:21:44.884+00:00','keeper','vm','cd707fc26a124e8e9ba5405b3b6c3da7','import-survey','Mapping','edit',NULL,1,'e051aae6011535b79d31d60d1ea815c3fa99921093492438aa73cd79a036d0c1','f1a99c7ec4961e2c4cf2aaccade200ae1ade205d8b788bac6bd6c32557cdca41');
INSERT INTO "change_set" VALUES(10,'3993e37c76c04065b9e9a3e22f008a22',9,'2026-11-29T22:21:44.903+00:00','keeper','vm','cd707fc26a124e8e9ba5405b3b6c3da7','fit','Fit','edit',NULL,1,'fb34645546a225d345e0d75fe2a5d2ca3faf99c6d15fc79856c9957faebb55e4','b307ff790d197a95d81f2f24e9cef16e7f7bec443a51f7828f05a2cb78fac2ee');
INSERT INTO "change_set" VALUES(11,'64cf11396ab84a43a850f1a0ac7b1d88',10,'2026-11-29T22:21:44.912+00:00','keeper','vm','cd707fc26a124e8e9ba5405b3b6c3da7','lay-supply','Power','edit',NULL,5,'2fa1a3be5c9ff5340f6574075e27eaca6c8b7cb27c1321ef9ecdf96209a0ae4e','6ca25ce4a9f5403e084710748ec4e61757ef56f94c5fb6bc3d323e462401f364');
INSERT INTO "change_set" VALUES(12,'1df4d77aa978495eaa7d26605b0a40a7',11,'2026-11-29T22:21:44.932+00:00','keeper','vm','cd707fc26a124e8e9ba5405b3b6c3da7','make-set','Sets, waivers, packets','edit',NULL,5,'249a020730e1ad4f85aa28ced44fa05373174f44d610b83f056dc8c8b3f84f66','95dfcf8ae78de2da36a6fc74d9f01014455499b7c278bfc30e4e6aa668f7c311');
INSERT INTO "change_set" VALUES(13,'c0828ba8b0c4470d9cdd8e09f90abd93',12,'2026-11-29T22:21:44.948+00:00','keeper','vm','cd707fc26a124e8e9ba5405b3b6c3da7','record-piece','Pieces','edit',NULL,1,'fce87bd64f441d4bb228e9be6e148e92f3a93719392f7ce2a62c3020f62d2d25','000864f228626992b126eae1372e4692c7814eb5b64e0513e56633821c502b8f');
INSERT INTO "change_set" VALUES(14,'f0ba2af43ef94c3f9a838a3719e0ee2d',13,'2026-11-29T22:21:44.952+00:00','keeper','vm','cd707fc26a124e8e9ba5405b3b6c3da7','add-opening','Add opening W7','edit',NULL,3,'1ba37e86f40de1260e8b2c8ca08c7273fd9629cb01fcac9dcaa2ede0e436ea41','e245ebc33a1f033cbc23811bceff39c5db8993a769c3d1e9ffcc2e5618099b7f');
INSERT INTO "change_set" VALUES(15,'b8078555c6ca4e5c943eac8e029f8103',14,'2026-11-29T22:21:44.984+00:00','keeper','vm','cd707fc26a124e8e9ba5405b3b6c3da7','retire','Retire opening W7','edit',NULL,1,'d6586a3e47a29020641142cc12be8bf824cd4a640831d421ac24a3a67ace98c7','3abff0a57010130586922922437d52f57a425efba9fe098b2c06934a9d9c071a');
INSERT INTO "change_set" VALUES(16,'66340c00f1494a14a82c015f54129447',15,'2026-11-29T22:21:44.992+00:00','keeper','vm','cd707fc26a124e8e9ba5405b3b6c3da7','import-survey','Delivery','edit',NULL,2,'ec1854dd5260e2a3c61031cf8e5fca27f8ec1a885126662b603f429fa7a93a19','21035b5af9bafa5263ddf0fce234857b6ce72f3584878d2f7ede9e733fc4bd77');
INSERT INTO "change_set" VALUES(17,'fca044a1ac714026a9e8c1ad683ad70d',16,'2026-11-29T22:21:45.001+00:00','keeper','vm','cd707fc26a124e8e9ba5405b3b6c3da7','transmit','Transmittal','edit',NULL,1,'e0ec236cf8424b6f9659962f2d8f2c9c09b05b8646a5da3cf27e42029d0b143b','01832ffbce58e3f4fb2f189da2b5c68a1e11b96d548bc99cec6a827b40096768');
INSERT INTO "change_set" VALUES(18,'134045b903494baf8d5448c4081d2419',17,'2026-11-29T22:21:45.004+00:00','keeper','vm','cd707fc26a124e8e9ba5405b3b6c3da7','set-office','Office','edit',NULL,1,'18c824bd5aefca8eb3d25036c9d4524472b222e523744638ddf8ddff4f1e9503','02302fe329235b226cbe1c8cc1ff858b5ce59067b5dd7394c6e851d3e7bd54e2');
INSERT INTO "change_set" VALUES(19,'c48d0d1b51794f6aa3b8bd54b1aa4b28',18,'2026-11-29T22:21:45.025+00:00','keeper','vm','cd707fc26a124e8e9ba5405b3b6c3da7','edit-facts','Edit occupancy group, sprinklered throughout of Mill','edit',NULL,1,'d05cd9018fb1d7e3ad53ff7d514924a0b8cd29371b0906dd92d26d9816553602','3da20e012ffdedca1e705668676dea06e63cd6cb5ae12e35c40c156e4584b563');
INSERT INTO "change_set" VALUES(20,'18f38ede577f47db868f63afbfd7fac0',19,'2026-11-29T22:21:45.041+00:00','keeper','vm','cd707fc26a124e8e9ba5405b3b6c3da7','edit-facts','Edit occupant load of 1','edit',NULL,1,'704c3239ed82a6053475c11579aaceebc36d007b17c97c3c16374c6e3f4cf8d6','54c81c52dfc1c63e29a1ca81c9776e2b7952ceef110d4e1b4f0981790d0fdacc');
INSERT INTO "change_set" VALUES(21,'045fcc44e3794629b16aba257cc302e9',20,'2026-11-29T22:21:45.045+00:00','keeper','vm','cd707fc26a124e8e9ba5405b3b6c3da7','edit-facts','Edit direction of egress, edition of the code of 0012','edit',NULL,1,'d36c370283a06cccb33577d12b5d923216093da6883467c03f76d9c33a22c2c5','d339df3d143377cfc91d3a249f81a7b7ac7a2bbd89ff0bc450102425c80a12f4');
INSERT INTO "change_set" VALUES(22,'c331f532e7534913bda5415724d959e1',21,'2026-11-29T22:21:45.057+00:00','keeper','vm','cd707fc26a124e8e9ba5405b3b6c3da7','add-person','List keeper as specifier','edit',NULL,1,'8d48a203942206c4425de35f81be21e076b91e1789f758d3cd398547b2b5980e','04236674c7465cfdee30d25836563b641c12dae96eea381443daf4de96afb480');
INSERT INTO "change_set" VALUES(23,'7faf0b2fe4464e7c94e84a4556ab1ada',22,'2026-11-29T22:21:45.075+00:00','keeper','vm','cd707fc26a124e8e9ba5405b3b6c3da7','attach','Attach inside.txt to 0012','edit',NULL,1,'028cb9168f18fbb61e6bbfb10d9bbb406c496996fae4219313c1eee5a0f7fc0d','8fdae940f70e3adf958137dac8cc6a52ea9d0b7d7988e96633f71ace7a9b0963');
INSERT INTO "change_set" VALUES(24,'bea26eb83c214ff6aa835d2061c0b90d',23,'2026-11-29T22:21:45.213+00:00','keeper','vm','cd707fc26a124e8e9ba5405b3b6c3da7','fit','Fit 1 openings','edit',NULL,1,'c7c77be750d694d3d9ede6c1d6188b96c83fe0bce93f17a3466774d70e0e7731','5658a09477c6f284758e6ba8e58300a75bd8b87f2715743e59ef3dd1f8d18fd3');
INSERT INTO "change_set" VALUES(25,'1d107e07323b49cdb535cde07ed00c04',24,'2026-11-29T22:21:45.384+00:00','keeper','vm','cd707fc26a124e8e9ba5405b3b6c3da7','freeze','Freeze revision A: 2 openings of the whole project','edit',NULL,1,'ae4b6c778cd01826615f3dbb241594446ab02b7b93a6cbf9f00fcc772f144d24','214953eb664b6b2358b47ccafd2be13d7708b7c69646a3d2a4d1beed374a71e4');
INSERT INTO "change_set" VALUES(26,'25dba0c2f5364c159b07b9dfb5e339bb',25,'2026-11-29T22:21:45.387+00:00','keeper','vm','cd707fc26a124e8e9ba5405b3b6c3da7','edit-facts','Edit hand of 0012','edit',NULL,1,'e5529992f4b406367141132baeb33f6427e3ff7f388551f4fb540bdad4d489a9','e6ef0fefe1c863135000d28b541c1e30d45da300e91dd15f9eae5ce5678fd7c9');
INSERT INTO "change_set" VALUES(27,'0ab6bad4532e41419cd981b5d4faaa6a',26,'2026-11-29T22:21:45.405+00:00','keeper','vm','cd707fc26a124e8e9ba5405b3b6c3da7','edit-facts','Edit hand of 0012','edit',NULL,1,'5dab07f73214a453239fe7ef4e1e2f954e6c652f3adca0fa28b6f45212ce98b2','ee76f0136404a615f64ab69b1866cda1948d52787a8aab8a6eb2032c6cfdaa87');
INSERT INTO "change_set" VALUES(28,'7216eeb6a4694aff911d48781881f7c7',27,'2026-11-29T22:21:45.443+00:00','keeper','vm','cd707fc26a124e8e9ba5405b3b6c3da7','undo','Take back step 27: Edit hand of 0012','undo',27,1,'5419f4a073e252c892bc23b2e987d476274b1271740f85bbe16f43dae8da2e6f','e457d79127f2980f8ac94bc8bd978a6e546c34f77f6e2c40ac18dff64cabc884');
INSERT INTO "change_set" VALUES(29,'6b634679798747eea4f9ffef31d374fc',28,'2026-11-29T22:21:45.461+00:00','keeper','vm','cd707fc26a124e8e9ba5405b3b6c3da7','edit-facts','Edit hand of 9E4','edit',NULL,1,'b9ee475f467afbe3639a5c4182b03c1dfe2e24f93026cb0972fc964a7eb2ad8b','0d04741b2ea20a912a391866ab53a8208fda2dc4e22b2f96c961cf01b5095b14');
INSERT INTO "change_set" VALUES(30,'a424448ebb3142c28b21115b17a7c9fc',29,'2026-11-29T22:21:45.469+00:00','keeper','vm','cd707fc26a124e8e9ba5405b3b6c3da7','edit-facts','Edit hand of 9E4','edit',NULL,1,'7ee69686f1bc51665fafa6e08267ea6aa2ad9390f890707d6fbf5f54ebe7b2c0','ee61cb202c4fd505cb505b0e9bdc2cd09aea1998e543c0a72275b43eddb7973b');
INSERT INTO "change_set" VALUES(31,'e57a6cfd5087409193561f51f1a8eb95',30,'2026-11-29T22:21:45.509+00:00','keeper','vm','cd707fc26a124e8e9ba5405b3b6c3da7','undo','Take back steps 29, 30: Edit hand of 9E4','undo',29,2,'c9c00cb9627bde501b82f47e92a45d348adec1f52b00ec71c2e969a8e4dc2db8','59fb7fadbfdca4cb164c745d85ddd17c3f341108d3edfcf8f98bc3bdb2be4358');
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
INSERT INTO "chosen_part" VALUES('0295e09dd84549b79283e6bbc5ae875c',1,'0da0698201054b2e8c6460430f121ca2','0da0698201054b2e8c6460430f121ca2','cylinder','C-1',1.0);
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
INSERT INTO "circuit" VALUES('e7748affed4e47b4b2b8b04832a0a9c4',1,'c1c88c713e764e8385eb3f605a3491b0','A',NULL,NULL,NULL,NULL,NULL,'drops',NULL);
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
INSERT INTO "delivery" VALUES('3e63e593bb614af8a5a0230021e12da1',1,1,'doors.csv','f','2026-01-02','keeper','{"new":2}');
CREATE TABLE engine (
	"key" TEXT NOT NULL, 
	program TEXT NOT NULL, 
	parts TEXT NOT NULL, 
	CONSTRAINT pk_engine PRIMARY KEY ("key")
);
INSERT INTO "engine" VALUES('program','0.1.0','{"fitting":"code"}');
INSERT INTO "engine" VALUES('fc4b715b1aafa8eebc4b1109ae148987','0.1.0','{"attributes":"3e6c7dff115ef3976a70cc8400c5ed63","calc":"a0edf1c722849dd6c227fbccc7aa34e0","catalogue":"7df10039fb3071ba446a3c75e95bc324","family":"f1370ffd80a399f8096e52df29b5d53c","fingerprint":"ec19441270b1cf62c9ac718a54c03509","fitting":"26b858dd2cb2aca7fe68afe89d1c9ab9","hwsched":"c4a96cdca046aeaecf37a157d67b6c01","keys":"b04933dda784a9520271656ded958775","outside":"acb860361b5b7f575d1c3e0dbde52f19","paths":"60e302995b63b5195fa21074b2edd36a","quantities":"75b65ca07331222c88f727d5f9c2f8a3","rules":"08e9d4eedbd8eb73f9c5e5be42ea985c","survey":"43bf4615be196f2ab5f29f12ca819a84","tables":"97e87a111f65c75ba1ebdef10f5b6fc5","telling":"de1898b954ba9f75a117331f7edbc452","values":"23d5f972348319519f3a7efa3285031f"}');
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
INSERT INTO "existing_item" VALUES('0429ae9c8d4f4b2c8a013a2cd9efc2f8',2,'0da0698201054b2e8c6460430f121ca2',0,'lock',NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,69.85,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,'{"key_group":"AA"}');
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
INSERT INTO "frozen" VALUES('610b1e2ed6134016d705ed224478673d9d55c7785603d7613d1655c17bfaa55d','engine',X'7B2266696E6765727072696E74223A226631346166646366333864393531653435376432333433653730323830323039222C2270726F6772616D223A226877736368656420302E312E30227D');
INSERT INTO "frozen" VALUES('d01372fcd5f4a830e4bb59fc75d1e27a66be344e42c979825f007e2228ce8bb9','fit',X'7B22737461747573223A22746F2D6D656173757265222C227061727473223A5B5D2C22737461636B223A6E756C6C2C22706C6163656D656E74223A6E756C6C2C226361626C65223A6E756C6C2C22686F6C6573223A5B5D2C22706F776572223A226E6F6E65222C2262617474657279223A6E756C6C2C2272656675736564223A5B5D2C226E65656473223A5B7B2266616374223A226578697374696E675F6974656D2E6C6F636B5F666F726D222C226C6162656C223A226578697374696E67206974656D3A204C6F636B20666F726D222C22626C6F636B73223A227468652063686F696365206F662063796C696E646572206F72206C6F636B227D5D2C22636F7374223A2230222C2263757272656E6379223A22222C22636F73745F6E65656473223A5B5D2C226E6561726573745F6D697373223A6E756C6C2C2272756E6E6572735F7570223A5B5D7D');
INSERT INTO "frozen" VALUES('53902b2513ba374dd07587c60671ee33ee8e8b58e897eb859b4bbd0caef5de26','findings',X'7801C557696FDB4610FD2B037EB20149B00C1429E84FAE63A3E99104890B14080261B91C891B915C6297B4AC06F9EF79B33C4CC5F211D769014330877BCCBCF7E6E087CF916B728EE2685DDA4D394D78691D4F5367F23C9A44A9F1DA54B92965856FDC156F61F57CC5CED45BD836CA95A65CC158B0F76A25EBFE2AC3593195CCA9A79CD532A63FF04B1B93D6D9C9D892B15965F58EA9CE8C5E97386DC75AA81A77AAFC846CC572654C17C6313955E361060712E58DC7F5DA16852DA9724AD746734C75C6E14A52654A9B4CD5E46BFCEB09AB4C4D296B93325E308E93B54D09EBCAB2C7A1BA7112D2992DAA9CEBF67D8B433C0EE3870676A5F206CEC49FBF4C2295D8A686433D4101E228FE1009CAB3E0C6A228E078786ED11D19066C47B61E596CEAA09DB5A0461F27E0D75C711AC54B957BEE1F1789508FF59535A578137D99ECD791F1BE612C7C0E1D0DBC9F6A0D75982407FB40834792385F39BC82391F5BDFD7CA384AAD75A3A5BF4202F7CA46ABA636B6F4B4B4796E37B474B6200E174C4441C64DC8B1D259D05586E310E87D7AF94101EC93478FFB208F9E59356037A2BB0D6A6408D18D9E4370FF5E0DD6A5EC70ECB3AAE14D5B0EC0922B46F49E5F5716893A96C1A85EEC9496212976AC7D5A9C105F1B2F4506C5820B5432ABD7E1B67BD5238564D898CB16A93E4329EA8A8E3C57CAD50F959A413AFF6FB4FBA4D6937A4B6A42C84843DC1132327565A62B56030DFB6B530FE642589809A28B70C39364B934F5147D22D4F46F05995ADD145C064E1EE87497A00F4791F1681A3B4DAFF7F63ECD7CB2099A8FD7CE545268D02F2D30109D795AA1E27B4E2724AD768B3AB36CBCCAC9ABADC7919ECAA648422EDD5D7082E0C43BB552A614B1EEA30FE681B9DEE96781B8AD34D3CAE646CBD0B093F4D2A351A31035E2C5CB07707E6D139B6E29531E081869E2960AB50DA30049DF9E60B4A833D80DCAB1769C823F0C0B93AEE533F2CC0994609514DAFC9AABFADEF45D3380969595B32BA78A82D370567786ECA764DB4E1392C4989D708338D866F6A8179CFA75C8FB76892D3534635D30258DC953201053B6F13AC31DED6C419C82B7B7EFDEFC767E76497F9EBEFB9DFAA5D4E2BA6871A5CBF3BF2F1F41ED939224748129A641C0E66E5138348D117710B074FB3B47C1A18CDD74E4310BAF7E39A3F9D1FC68763C7B4107C747C7F3C3137A7DF1F654AC137A01FB7CF6D3EC673AE06B0D06A43BC700B371E8C7185B4119805DF286D19A3DE7AC6B40DA077028366DCB5421A1B4ADCC8303DE3E77E932437AE24F5195AB52F42B790B05E217466D314B62A40EAC8A327295707E53FCDB56E227817F95DA4A5C944D9DA5A9332BB335B47425677F6A9CF1A9C1288B69555A08D2894B948661C0ED1477970AFA5E3E647917D5AC7DF1246564AC44B6D325466C695D3BB97D47FD7CB43664301B35F29DAE3D3072819C64D480FEA3E07B3F32FA9D63F975515112DAB55D82CD4CB9149F384C213BF1A1844C857B5092F9078CF5A780CE96E683F72F5FD17C3E9FBEFC466CDB43C07477AD8E6FBE6AFEF3F0F775850E0AF87C4B366116BCF5A97063580A338B1E199CF0B82F9361C37708F2E3570D7017AF');
INSERT INTO "frozen" VALUES('c6b4adfcfc80e7d6dea337b772ae335aeaf7711094b2ebdc5e603eba9caff201','opening',X'7B226F70656E696E67223A7B226964223A223134306437333766313231633436376239663938323837376431623636376438222C226D61726B223A22394534222C226C6576656C223A22726F6F66227D2C226C6561766573223A5B7B226964223A226430656464363831633430343439316161353833366163313033336432313965222C22706F736974696F6E223A2273696E676C65227D5D2C226974656D73223A5B5D2C22706F696E7473223A5B7B22706F696E74223A7B226964223A223134306437333766313231633436376239663938323837376431623636376438222C226974656D5F6964223A6E756C6C2C226E756D626572223A312C226E616D65223A22222C226F7468657273223A5B5D7D2C22666974223A2264303133373266636435663461383330653462623539666337356431653237613636626533343465343263393739383235663030376532323238636538626239227D5D2C2266696E64696E6773223A2235333930326232353133626133373464643037353837633630363731656533336565386538623538653839376562383539623462626430636165663564653236227D');
INSERT INTO "frozen" VALUES('7255729aae286381c5ccc4f1c81773c372284dba25cd2a03191454743d58f129','findings',X'7801CD584D6FDB4610FD2B039D5A40126C1F7AA04E8191A23582A668D35310082B72282EB4DC257649314290FFDE37CB0F518EAC3AB603F7605B9AFD9A7DEFCDEC8C3F7E99F9C6F02C99E5BA5EB8063FF9225335CFE6B34C875457465B19CE5CDA946CEB8081C07BF6BA3EC0DC2A6FB5DDC25872086A2B53FF7084CD28750DA627848FAD0AD43ABFE38C70046D0EA42CB1F246B327EC15B4B3E472AA0BA6CABBAD57E51C533218742067994A75A0801F8729BED581973872A3820E38307565890D2AAFD25AA7E27ADA78F1E46F666A0B5553A6F31CC7F49BAA1DC3AB848A36A485F854B15C227AFDE75FEFEFDEDE7EA0C522689BF2A2A9E04DC62B6A755DC0EAD9B00A58A44C70D89C3D93A24AA53BC63D0190DC509CDB2BD330BCFBF2753E531B18E10FCC963983F5E3A739B0D37BCE66498EAD78F8BADE08AC9858396DE39AAFF391A3EE9817A2E98380DDF90DE86FAE6E7E595C5D2FAE6EE8A71D73C5FE6712EC4D068AEA027C0939391006A5C1950C6A00590166538C6E814804EC51BCFC1E42C31DDB9D036AABB49DB02367E1E848FD065328F7AE8C0B82AE23F73F02DE9D75AD5D6C38779E1799D7C680879328088DDFF301D6FF08817F6CDC2BA1483741327942EFF01B32CAEA6235B514ACB7457D6202B6E9CE22A04EAC25C2D26B6556836013FA55437E5ED5A06245FC5907F9046D7399D0ED01A12BEC417D7B50679CF317D84922BCE2698CBC1836A146104A004A10679CEA4CE249242F043516D6AD83C8C780BB756565B8EEC63BB092E95D5FFFF6E77433503DC4E64C5058465FD76589DBC5EF1D4F13C3C8D2C4367084457D565976F4C030F0B3167E96694FCFFAB8EF9372C28968B504168E7A09D1F6FE27F4264D2145BD31901AF21872E138F476EB3104B3995A7F836A2E2A2D554D8D941F2877C6B8B68B6E8E7BCD09A2D37E4E9E555A442922BD64B8539FD3CF4A6C74E8C9BE9ED3C580E6A88B8152352232E1B9F37F62887E3F9F53E711C42FCDE9FBE1C973BE9CF2F9B97208DB299927294602A14F64A3FA1FC85183DAFB6CF4CE4916C76917852169655C6864495705704C22430A925995F2B11679942A5EF7B6E7A43590FA8DB404A28986B82764621AF349CC4A230DE793D00066977304D1753CE149B24CB54F1B948931E5DC5764E5DA28D347BF8C8EE2120A4D559983141B69E1025B5109DD1A7C8C75D403455E82AA6BEF4C8D92138F114A3CA931ADC3DF639D892DC5828A52EAAC6F3208EA9878F452B424B23C4754E7080647A6268B66AF0FA3C48261BB4571DA17D0BE0184522EF5C0D68EEEAE05DEA62B4A2E06E00B808AF3979D47EB18ECE750BDBB9E223A5DF13F8034963E5757D7379479D5860974B1999192D7762D4E145ED7E7FC685487A7079DD543529D423A99FE3C44C7E0392929BE37D8513442A89EA4713C90712A43B325A5A5AEC318C62833FB0C436F44CC8FC80191AAA3B4852ACFE90E1D231AB47AA868431D9F91DE503A7CEF9853B5326E8B56445E99AE5C455F878A04ED9EE4146CA7D198CA032CDB6DD07D8A6DC4E4DEE3739250563495F5F8C62E2F1038DE7ECAE434DDCCD1AC1F830BB39E4D73EC41FDA2B192DE62923CE1F981AE1F5955AACC7B2DBFCDA4F988793222DFED2D4C4A25D4BD1A40FA4025FAAB95B41492B3B76882ADFC4BA0EB3AA5D938F6A24094D95E882D78D193F041BA7AC986FDB1D2363E1429477F26487F472EFFF42F2FA3EFDE');
INSERT INTO "frozen" VALUES('9ceadebbf172d8ff6b24834deec4ce98474f7bf0ff2648e9f1d65e88a8be9078','opening',X'7B226F70656E696E67223A7B226964223A223064613036393832303130353462326538633634363034333066313231636132222C226D61726B223A2230303132222C226275696C64696E67223A224D696C6C222C226C6576656C223A2231222C227374616972223A747275652C226567726573735F746F77617264223A226B6579222C22636F64655F65646974696F6E223A323032312C226F63637570616E63795F67726F7570223A2242222C226F63637570616E745F6C6F6164223A34302C22737072696E6B6C6572223A66616C73657D2C226C6561766573223A5B7B226964223A223136623837393763633934383432313738666238326633623536376239626333222C22706F736974696F6E223A22616374697665227D2C7B226964223A223835326539373830656665303465656439613334636539396439666637386430222C22706F736974696F6E223A22696E616374697665227D5D2C226974656D73223A5B7B226964223A223034323961653963386434663462326338613031336132636439656663326638222C226B696E64223A226C6F636B222C226261636B7365745F6D6D223A36392E38357D5D2C22706F696E7473223A5B7B2263686F73656E223A5B7B22726F6C65223A2263796C696E646572222C2270617274223A22432D31222C227175616E74697479223A312E302C22736F75726365223A2262792D68616E64227D2C7B22726F6C65223A22756E6974222C2270617274223A22552D31222C227175616E74697479223A312E302C22736F75726365223A22736574227D5D2C22706C61636564223A7B226C656166223A22616374697665222C2266616365223A22696E73696465222C227061747465726E223A2261626F7665222C22785F6D6D223A32302E302C22795F6D6D223A313130302E307D2C22737570706C795F6C696E6B223A7B2270617274223A6E756C6C7D2C22706F696E74223A7B226964223A223064613036393832303130353462326538633634363034333066313231636132222C226974656D5F6964223A223034323961653963386434663462326338613031336132636439656663326638222C226E756D626572223A312C226E616D65223A22222C226F7468657273223A5B5D7D7D5D2C2266696E64696E6773223A2237323535373239616165323836333831633563636334663163383137373363333732323834646261323563643261303331393134353437343364353866313239222C227365745F6E616D65223A2248532D31222C226F776E223A5B7B22656E74697479223A226578697374696E675F6974656D222C22726F775F6964223A223034323961653963386434663462326338613031336132636439656663326638222C226E616D65223A226B65795F67726F7570222C2276616C7565223A224141227D5D7D');
INSERT INTO "frozen" VALUES('931dd6ef77436117785886692713b5ba3ed0cdc21723a4fd9ac15266f572a3a5','chunk',X'7B223064613036393832303130353462326538633634363034333066313231636132223A5B2230303132222C2239636561646562626631373264386666366232343833346465656334636539383437346637626630666632363438653966316436356538386138626539303738225D2C223134306437333766313231633436376239663938323837376431623636376438223A5B22394534222C2263366234616466636663383065376436646561333337623737326165333335616561663737313130393462326562646335653630336562613963616666323031225D7D');
INSERT INTO "frozen" VALUES('6e64a6ea0d3995b373e3f9e3e3903184fcc00f154c3e7630a560b7ae32c70b08','supply',X'7801ED585D6FDB3614FD2B849E364035E4CF38CE53500C03BAA12FEBB087A23028898EB850A44652768D20FF7DE792FA709A264E37B4D886017E1065F2F2F2DE730FCFD55D62856B954F3677896B9B461DE94996C92629A6C57A5D5C4CE7E262B510EBF97A29F2F96E952DF97C7139CDB3244D34AF0566BE56C6098F71DE4A554A7D936C74AB549A28B117EAC1605BF7C346F1028BE3C48FF47E3659A6C9719C61A513E3A8E1165EC6E9ADA36D15879FD8947B2F2CFC8EFFC5A114AE7FE13CD7657EDC56A6B5C34B2FEA4658EE5B2BB6453F531B3F2E2B782E354E15CCDEA749216DD14A0F0BEFEFFAC1102B7171B158F3DD4E940BB1B8C817F92C5FE7D9623D9FF18C5F160BB819A3BBFDC2D05E63E541DA21509FF59BFBADD1633095AC2522B2E5FDB9B8E216F14D4A6B1A07830FCED9CD1ECEF93F0A9E438103880AB1DD23F3C04429F6B220C8BCFF40512DFB47DBEAEE65D15A2BB4A75CD082C228C51B27505F34340183A160C8426542F58C8993DAB6AE1AC78F32DB58932B514750DE4A4D75DBEA5B6D0E1A79AE8573FC864AC5578229A16F7CC5CC8ED1082EB29D35358BF966DEB03753261D1B976B214AB29C60EE24AE4639C24FB8ADE174C432F6E1B9695128C99B69729FDE25CFF871A8B86759369DB1D2F2833BD96FC3A46715774C1BB6C3A3A7998569352A0EB1ED5DE9B69E60CA234FB29267ABCBF52C9B664B54A05817ABC52A5BCCB3DD74362DF8ECC4D3E41EC7406EC4D6A0688916BA74D0B9C299CF1A83819ADBDB381927227762A526D335BBFEED47E68C0A048524991DCDBB7B18B9B35B803488BB023EA8685FC1D21ED8C1CED2B9089B8E5726811ED387A91A32D587EB508126618935E6206C9F7A24BDA8C0E00084B1AC23730AD027BC02501B85FDB71DBCEF68B78ED096F3F972355D2ED7F3E982EFF85AACB29998EEE6CB65B65C5EEEE032816DDB5D18004A9A78D30F0910C30C545184529C11872F08D500D0CD6292A5C90D6F03F2632E60DD793BC472C80CB75C29BAA2A669122F9804534D05B6CCC80AAF4198011BB4DA012AC966C79513149E4AA872AC4DEE5C5B5361BFA700E3569594BC4230E0980A0E8C5C4BCDBD34DA9D146178BE4E3E90415451D37A22977895E17E42B4071A57489A3BF9BBBBF8B64297E39A471CD2087E3BDAE82EC37E8797F2C78B207352A691542228E9604F10C629D61E84AF739371772B4A8A563713B60A85486F67FD090225C60A91BA1244B6C8E0C3D47C4AA337D61C7C45AC7D0F5C8235BBA2BFEB074839B0AD0888DDB5FFAAE7D452BA42360AD2007F8632226C41E758E9A9B80EDC1287E0E5C8BEBF4646DE10B79DADBC0996E61CE8A1CD4D5D1BCD1ACB0B8F8B66C338DB1BE5C1E9911F0F812F3D3B181BE2D47A6254300596744C4124074BAF4DDD28E161E22435B4D59EAB96AE2DE2BF9EC7073D37D0EEC9A2C0735C120FC55200ED85E136A7F3C3646324928047988C0B5FAC7ABA680F37CB081CE2CFE42C0D20A15F3D895F7E977EED949EDECF4FE53450EE90CFD315DF2EA12F50C9FFC484FF25D1F2B5737E22849E4A394A7148F8C9F4FF72BE07DAFB5B347DA8048ADC3262F52353869790A4BA845CF56E2060F072C756EC7ABCA19E4D7B00D228B189ABAD286E8DC61DD7A90425B8F30C42A57F511B8CA318E69E2B73D34251E06FD7DABD3832C81773B862BD65A999B1255C87B9DC40ED638B2126CF5D0557D4100C22FF8A9DE0E529780DA73FC5D9E94571568D7E935BE4DB930EEFB4F8390C521B8ED88D3AE12D018EE516FA81D55C924ED4E8CBE285C37713002DC6370202B9C50787D8C5C5E9413691A28C3D1EC0B44B1930C159F8DA12F0ABA04B6983801C970630C15261B41605F426CB812A86C6D401E10AAA43A35DA5F6B034E86826EC27211AC831883036A355655B7863B129C407841AD74706B9220EFC9802821F53860F294A00964CE8021F8AA047A2FBA45481CED08984BE834C4E4F4CA6E845155A58D864E263211AD2CEB40705A44063404743CB421A1B5FAEF0C9877DC759CEAD95C2A6B423AA2016D48AD5358A04F29016E38078C8AD696F2A2826D8D4EA4847EC82C0C41FAD6C6A48C9EF27EC1D36E3ADAF0C093C74A87B0ADEEF2D3E4E9512AA0C1E95A29068FD9F29FD2BF6F687D7EC62B69C4C678B10F1F03C5FA5CC098A2107CF14A6A1AF56B12F857CFA59F07D70B7C342E71CED085787CC90F6232F9143FC42A63529509281220D6290C76841D1E2FD26844FF15CA8E0494057C404D040235E9A86804021EEDE3C7B7EA2A3C19D5EAB7651798A3C1E494C28FB2823BFB9AA3CA319FBBE0E5F7BCE48FF47F5FC8EDFA2A9463D7DA2E39175499D2116549429E40D958B90870EE189DEE70A56C662DB810B86C672F894D91707F52EFDEDF4AAEB1802A7A3A30CFD2796E2D6615ED6A84C4DB65C48FDE71686AF32C0457D0587BFB4B17DA62846A4FF4287A7EF3FB142F1808884866B43DE112623EFA1A8E3B0BB7B4291A37E6946D15F8FFF0AC87DB8FF13B706D110');
INSERT INTO "frozen" VALUES('e1b6b8f5c59be90b5abb17783cf85b0821b09374e626d00bd5569a0566e02d86','power',X'7B2270726573656E74223A7B22737570706C696573223A5B7B226964223A226331633838633731336537363465383338356562336636303561333439316230222C226E616D65223A22436C6F736574222C226275696C64696E67223A6E756C6C2C226C6576656C223A6E756C6C2C226C6576656C5F6D223A6E756C6C2C22706C616365223A6E756C6C2C22785F6D223A322E352C22795F6D223A6E756C6C2C22726973655F6D223A6E756C6C2C2270617274223A6E756C6C2C22757365223A226C616964222C2262617474657279223A6E756C6C2C22626174746572696573223A6E756C6C2C227374616E6462795F686F757273223A6E756C6C2C2274656D70657261747572655F63223A6E756C6C2C226E6F746573223A6E756C6C2C22636162696E6574223A6E756C6C7D5D2C226369726375697473223A5B7B226964223A226537373438616666656434653437623462326238623034383332613061396334222C22737570706C795F6964223A226331633838633731336537363465383338356562336636303561333439316230222C226E616D65223A2241222C2277697265223A6E756C6C2C2274656D70657261747572655F63223A6E756C6C2C2261745F6F6E6365223A6E756C6C2C226C696D697465725F61223A6E756C6C2C22616C61726D223A2264726F7073222C226E6F746573223A6E756C6C2C226C696D69746572223A6E756C6C7D5D2C2272756E73223A5B7B226964223A226335333335363135353833313461666138653630326531663335353035353966222C22636972637569745F6964223A226537373438616666656434653437623462326238623034383332613061396334222C2266726F6D5F6E6F6465223A224A31222C22746F5F6E6F6465223A223064613036393832303130353462326538633634363034333066313231636132222C226F70656E696E675F6964223A223064613036393832303130353462326538633634363034333066313231636132222C226C656E6774685F6D223A342E302C2277697265223A6E756C6C2C226761756765223A22313820415747222C22737472616E64696E67223A22736F6C6964222C22706172616C6C656C223A6E756C6C2C2265787472615F6F686D223A6E756C6C7D2C7B226964223A226436633231343562336265663437646462633032383435336339303565396439222C22636972637569745F6964223A226537373438616666656434653437623462326238623034383332613061396334222C2266726F6D5F6E6F6465223A22737570706C79222C22746F5F6E6F6465223A224A31222C226F70656E696E675F6964223A6E756C6C2C226C656E6774685F6D223A6E756C6C2C2277697265223A6E756C6C2C226761756765223A6E756C6C2C22737472616E64696E67223A6E756C6C2C22706172616C6C656C223A6E756C6C2C2265787472615F6F686D223A6E756C6C7D5D2C22726F75746573223A5B7B226F70656E696E675F6964223A223064613036393832303130353462326538633634363034333066313231636132222C22737570706C795F6964223A226331633838633731336537363465383338356562336636303561333439316230222C226C656E6774685F6D223A362E302C2270696E6E6564223A747275657D5D7D2C22737570706C696573223A7B226331633838633731336537363465383338356562336636303561333439316230223A2236653634613665613064333939356233373365336639653365333930333138346663633030663135346333653736333061353630623761653332633730623038227D7D');
INSERT INTO "frozen" VALUES('46bfbe8a4aeea1f90a6c3c12dd08f9361e5b861d7241cbd8e1428b263b4bc329','part',X'7B226E756D626572223A22432D31222C226B696E64223A226D6F72746973652D63796C696E646572222C226465736372697074696F6E223A22222C22737570706C696572223A22222C2266696E697368223A22222C22756E6974223A224541222C226C6973745F7072696365223A2231322E31222C2263757272656E6379223A22555344222C22737570657273656465645F6279223A22222C2261747472696275746573223A7B7D2C226B6974223A5B5B22532D31222C322E305D5D2C2273746F636B223A6E756C6C2C22707265666572726564223A6E756C6C7D');
INSERT INTO "frozen" VALUES('cc462d6aade99b6d850f37587cc23cfce2698a965c1428852d9fed81e2af6963','part',X'7B226E756D626572223A22552D31222C226B696E64223A22737572666163652D756E6974222C226465736372697074696F6E223A22222C22737570706C696572223A22222C2266696E697368223A22222C22756E6974223A224541222C226C6973745F7072696365223A6E756C6C2C2263757272656E6379223A22222C22737570657273656465645F6279223A22222C2261747472696275746573223A7B7D2C226B6974223A5B5D2C2273746F636B223A6E756C6C2C22707265666572726564223A6E756C6C7D');
INSERT INTO "frozen" VALUES('0a1fd385719f443d58ec8bd17a0b3bc46f3dec6df5569e134519208f16824cc1','catalogue',X'7B226B6579223A2237346534393836346333303266663930613137343137356438636532643934303930353463336430373130303330363532333233343263643135396338636639222C2272616E6B73223A2265336230633434323938666331633134396166626634633839393666623932343237616534316534363439623933346361343935393931623738353262383535222C227061727473223A7B22432D31223A2234366266626538613461656561316639306136633363313264643038663933363165356238363164373234316362643865313432386232363362346263333239222C22552D31223A2263633436326436616164653939623664383530663337353837636332336366636532363938613936356331343238383532643966656438316532616636393633227D2C226F776E223A7B7D7D');
INSERT INTO "frozen" VALUES('338286fa94017dbc0c782a9b0fe0c707d3a5248bc6a1651a608ab1739dc73f96','project',X'7B226964223A223732306436666533643761353464333062393362656262393435616237336239222C227469746C65223A2253617665642079617264222C22626172655F756E6974223A226D6D222C2273657474696E6773223A7B226C656E6774685F7374796C65223A226D6D222C226C696D697473223A7B7D2C2272756C65735F6F6666223A5B5D2C22707265666572223A22636F7374222C2263757272656E6379223A22222C227261746573223A7B7D7D2C227465726D73223A7B2263757272656E6379223A22222C22646973636F756E7473223A7B7D2C227261746573223A7B7D2C226C61626F75725F7065725F686F7572223A6E756C6C2C22686F757273223A7B7D2C226C6561726E696E675F72617465223A2231227D2C226F776E5F6669656C6473223A5B7B22656E74697479223A226578697374696E675F6974656D222C226E616D65223A226B65795F67726F7570222C226C6162656C223A224B65792067726F7570222C226B696E64223A2263686F696365222C22756E6974223A22222C2263686F69636573223A5B224141222C224242225D7D5D2C226C6576656C73223A5B7B226275696C64696E67223A6E756C6C2C226C6576656C223A22726F6F66222C22736F7274223A312C226865696768745F6D223A6E756C6C7D2C7B226275696C64696E67223A224D696C6C222C226C6576656C223A2231222C22736F7274223A302C226865696768745F6D223A6E756C6C7D5D7D');
INSERT INTO "frozen" VALUES('9ca27f28c31332391f20aa50e90a0458cc0afdbbcbf932695e95891cb10ade3c','rules',X'7801ED9D7B6F1B47BAE6BF4A438B83F100A222CAD7D8D83F7C8927D971122376260B040706255112C714A921452B3E8BFDEEFB7B9EB7AABBBA498AD425B358600F702616D9ECAAF77EADB77EFF5F3BA3E39DE73B4783F9B0373D39990F2F7B9783CFC3C9CEEECEE5E8723CE4BB77D3A3CF951EA8FC4D35985747C3C9E56C78CC43C7A3F9D1E8623C9AE8C9F962F665F8954FE7C32FC3D9E8F22B9F4DA697433E391CCC47732D343D3F9F4EAA8BD9E0E87274347C5E0DE2D5F3CBC1E4785E8D26D5E5D9B03A1F1D1F8F87D5F4C47F8D8783936A31190FE773FF1DCB54F3C1D77935E5F1D9D568AE358E1633EDE2C7E1802786D5C96C7A5E1DF2407532381AF2D3A97F6D480E8727531ED15A87D33FAAD1BCBA181C7D1E1EBFA8AED8F7B0DAAFAE78EFB01A5DEABB04EE1E6B8C47E7A34B00F9FD3F817D78329CF1EF93C1783EFCDFBB252AAF469767A3494F3BE747352605C8D9E8F4AC0258161F81D8E164BAE003B6E3DD8C41F65F581174F3C38DD81DCE66D3190F66F43E7B026A871783D9E072349D3CAFFA55FF9B47C2AAA19E5E0C27A3C969C5B6BE8090F4D570707456CD47C7C6F7809F3C8C9F68F32F625360D488982E66D5F44ACCD1C1B549648026A292C0F38A83D3C1886D4C279998E7C2E7D56C3A396D61F3F79DABC178FCE9FC7C67777FEFD9EECE3BAFA8CFF86DD5DAA168A6773FF7D644DA6A7E361C5EEA7D2F7FFAF0C3371FDEFC50BD3C78ACF75407FBD5E960713ADCF9CFADE835BF1CC1F205C16AD60F82567EC0E009629EBC31854E87D3F3E1E5ECEBF3EA70088B1C2300F1D2F108929C8E07A00F5E18C09093E17819D3CD0E6E84E0B5E083C0CB1EAC3A1B4C405303FA4F8BF343B81B240F2EC1F784ED5697B3C5ADB83284A63A1E1E8D07A88D4AC834F54292E177ED62BE0CACD9A7C5286BE1406ACFE7BD01AC7F5940F1DD1F231006CBFBEBCA5F8762304F597BF0F8462A5E0D66921C1ECD9296E9B8BC6931E8C9747A79311B4D2E21E64928A165587EDF99A226C7830BF3FD93BD878F77777E8E4F02ED884AA85C6907F8C4EA156C5D4EC743E87534146AACE6CE87E7D3D9D75DB4A414EFC908DDBC9EE30355D325F5D44116822750B665F49BA248BB00968BB124580A633EFA2FFE2185D1A27860C928B24CEF7C3FBD825F40C8C454ADCE075FAB99C979213595F7BC6B43359ECEC5C57A3F5FCE78FD785E1D4FB542C7145D83B0CF13945E2F6C46EF78361A4B2EB352FFBBBE443A6C50C25EF891EDCC6357817736154ACEDA55205C491893A9843CAC864C497387B512E88B099F9E4E878534FD6D5A1D62DD8C84F3308E2F2AEFB1C23AA3844E2B5ECB3F60D66421029C161DD64A5E0B3BA3F9DC3A622576A4D4B0B236257E702B0F62238A8E060B593BB4C8743C1673C8F00F4F6758A25D616B34DB4D0C221C9EF13F8DD0BE9C7F96BA1D4FA79F5F609AD83C38C9DBBC3516A6B3E3A1CCF24A2C048FF8917BE49161D674F2204CEA2C089947F4B7D4E326CEF0CE6ACE08C7E496AC21C6ED1D4D17935227BF0BEF23397789E340D62D9430022DE667C773799217905AFE059A41EEE597D02BD21393F4775266C97B79797C2CE21F4D67B3E151AD39E41A253F3434EE76623046A1F58E58608623DD13150A0678C7977875FA5606E1E82B1E332C623AC98E6F037E570EB2057A9EA43F7C07D98C705DE7E2E4B48FAEBBC676BC7630CBD64EDAFF1D7BA54DC245326D9796982C562F0D1EF0A2BE80BB7E4442FF556CBE91A5BA385DA97EDBA2151AD7586EE8681582DC792B38E0326A7091D83EA1FE0356CADF5A2C25A3EC383D49D8C10B82D9443DFBCB7ED880F8DBA3B329A6CCDF4A88ABC3AFD6645BF2A630B82626D1569277EBADDDD1AF6D20CE71986C0F71E56E83ADB32131D0653020CBAD30FA6B8DCD392C78DC93EFC042990F7E1A5E253F02D91A547EC6BEC1362CB0ECB77498A081E89721AA42819B02C3E1B9AC26C16035A997273456A8D3906E3BF2F09B9E59A680E967BFC7AE2BDA2CC0DB069C2E47672D4164DB761EFCA7A5A6159137D066FA09DC75FEEC56A1DDFC0CAF5F811DFEED07FD3B07F6F373023CB460FDF630DD5704C6678AFB2EAFA6951F0717C6CF0BBC51E223768D524FCA48285EEB03EFE23D9E9C14FE75ED3C467C2ADFD1FE54355D5C6A5BA267BD1DD994FB72BA1DB7F5F0DCE57C64C6FDA078338C00FE0BE115560BB893694CC6EAEE4A6C9B48F34535182FCE4793D1E23CE70784FAC3C5686CC478FF85EBF00E8FA93AC3DBCA4A4354F1D338DEB859C9D134426D65FC82EDE4E190DCCCB1922725AEBE27E8713435209E5214A9B712401C4EC7D04C4BA61FB4F065DBC197BD6C72C17E919DEA4A4B47F409D2793B606AE9C7DFF49FE018E052FE6B21D468C993D16C7E29AE1C1C578F1EE369E175F2E8E2C2DF0E0EC555FDC7046C6899501CC36387D9C92A7C24D7C6A38E43930ACB992039F2BBA54024441F03B336A445F1795139FAE29FA3537DAA149A3321759EEAF71D02FBF1F0135BDBD93DD8DBDFADE3A7EEFB240B04F9C88B401174EC3C4124BA29AFD2EFF77B078F4461DE099C9194538E8F8013613B1E0DC86E0C672993F3A8594D541B5FE6BD176B49E214FA852A998FFEB8FCDA3B21D1448A40DA5CCEDBD1D9B542BED658041F1509B142F45EC1438407C93819DC267F355FE0A4077E703AB2137517C6EA3FD90F943EE997193A76200E9D93543C9BFFA53A1E59010C665FAB07EF7EF8F0F19B97EF7E7EF957927039E0AF1A22004B8B89C2173A97439C59080E39918464032C7C84A8D4A0EE552F2D4E2C31ADAC8F73B267382159733A3C6E89ECEF3BF5564CE2FEDEE3674F51EB59AD6A05C399F1DA10BACB42CA19E30DD7EF5B662689CAA73A2FF870AFAF957E534E90542E9C3A1E9EA09A56A407F54343753BB6391A1CB2B7CBDEE96C745170CCEBF8385482BE0BC9CB79BABB704747ED2C9136ED289676F66C00B949D8CDF8E8F86B8B446BA5E16870DE3B1F5C1E9DB5603A97EB498C3CBE180D49C4F8019824928BE880426FFE79104AD4D85E7B2B2D6F1936F69626C3213A4ECAC9BFC971D4D16036237FBA2522481310A589574B54F853BF9AC4DD296233BCBC1A0E950423BB44FA8835CFC224FD7988A01A12DB8028DA05F428E439D30264C4A65AF0FEBE838FF4D562F930EB79F21A040D2BDE8ADB838A938F05EA9B97AD75A4D673552241EF64BC98B7582BD3C65F44CE57BA3E00241A10BD294CB894041DEE11A949018A6CF80964462F2910D59C5C38312DF39BB18B5E999C5E9EB1C31629DACCD55584FB7B4FBF7D586A42E155ECE2F4647231B1AC0D0644BB8EDCEF82904C8DEA6224519551BD5CCC26F34F87C3AF5365AE6CC33FEA23E8E6BC5DC88E342D3504D856CF99AE9218098E512CF762E28C7167D56B129F192518E4591970BDCEB4CD716FF2585B91322BA79FDD23692321DA5A27E5B7421BE71D4B95D8ED348E5646E4AF23A256DA88783A41F05925991AAFED75948B6F73C166A9B8984DFF496E09AFBE50351FAD5160CDBC5B50D57AF026085B8E5FD70971D761989F21199890BC8B90D193E1159F5905C28FAA4A52A6E493CBD9E8BCAB6F6AE0C21938D87BDAB8022B0400181764DCA2AA9BDFB76EB7EBEB17C3C56CDA6BE12BC753DFA56F4E14569D0DC64AE50D21688809C9412D7A475D235F15CE568E59209E8CFE909E9E1FCD8657BBD59B1F7EAAFACF0E1E1F54DF54DFF1CF87FB0FE5A1FF6B210FD95945652C5F540FABF3F382E4BB7C45A0A9920E9F2A577924D354FA771122044CA64B7C90B158F8FB9F875F3FF9CFB62950C9441BE6EBA8F64A61846272DD449A29BF6D7937BB7C2753744A41658E7F6AC5C463141F8AC5FAFBD9F0E4D5E29142092EAD7573FA9F0EC8B43AEC2B64EA95C340450C547CC96E5AF81511D9702B5E93C394CAED7764818E028D22F980C68133829FD19122E19C7669A8A864B3F0EF88B2EE45B81C8CA7A70BABE5828493C5A589F74CE8FC4D5AFE6A40913BF2C57CE9B2A0C323BF0EF511364BF2F9E33312C2F1747FEF89A1D72F9EEC11B6217FA49D4937FEF0E1E7EAE9FEB36FFDB5FE78B4FFF020459B37AA2506FBCF7B04BAE28582206F2D1844ECF10DB94E3A4048FA85A8507E22B2BA211D96555D8712CFABF910A1A1F344F52D493F0A4CD9B52B785DD698DE0327C745888BC5E11862C190F3B25A669F2081151A912DB7DE6AF13B52FA490445ABF8CD2DDDB8D6309877CF5511416B14D8FA6D383EEEE10E35BCCB1FF3CBE170CCFEC7EAA9B9894DD890D6E06DA56A89D05CAB4B686E0087533A05107FCB8227A703DF43FE9D309D9FFB5340F89E5E16B82AE3546E0EE27F053ED1B849CE8C5539F029C72E5D77353A26C590D227DE61983B6764AA0901C55486707B94880BA20054A0E47B3EAC3D49ED602687BC2E047572B242963A5AEE48EEAC7C5EE0C2AE4BEEC2BE128E23CAA104CBE53ED8C46C58E2C2AA34459D39652B606BB8788FC06A71CEEF3B065226CDAACC96E19DDB7A6003BABD3075D6D6ABDE14E655B91FA5D9ED8EF193AF76BE3A20A9FA857E3CA6E2AD9A25145F903C46039F9089BBC6B56DA8A572DDFC725A86FA1BA86632CDC874C1E7E9977761ED4C2EE143D569F9130F52A247049A91074403E1D52B317434BDF84A4AA8838625912E89965305910712D9516929F7BE0AFDF74D48E1EB50CC5F3BD6C21A9D70C7E14F7760B9134997DB5A561333A926A5C8FE7C698B38337C929B0BD23979B8D1E4B65224E4A7442084B7A2836D9D221349EC7EB9742CAA7728718DFC88BF7A278B4937B6799B3ECA6E7EEE28F93CBC5035F42E7292577315C0AD7EAFBEFFF165F5B2FFF8C9DE813D19FFB3FFB02B2E1DE13046D87E5877FD9536095EF21AD67F7405E47A5FD29348687EC2DE3CBF0D93D21299B5D6DF48BB1A0E5853BE4F0E5BDE6933AD4C4FF3CC5D10D6A166F8A9E718B8199046379EFB4457E0C731315D10B294C33F881247300F1ECF9C48763B58CF07A74AA2DA2E17B07E37261C2678F2B7B85FD653F24A233A097534989187540F2F52AA1DDCAB94E22B78F1542F917B652F458B84863A2431AD420A89C6B4910E8606847DAE5C829443E235F53459B76177C658373C0F8BB9782B16A364D2F814F9237EAD848FD2F5EE5FD30EB643AE535B33F56D26D46456FA05BB6CF22A2FEC4DA456967B4061879D9670429D57FD575032B6671932FDC1257929F7185BF8B686939AE8E8F3B077E24E8A0C63B010BC13DF420BB18832DB78248BCB9E8A6EA1DA30D1ECF22E22D4689887FD42C55019CB4516E5B828E3AC09635FAC88046D0D8487B4FFCC398506101F09202FE9CEBCA28A45A9B6A2C11B263B91132267479E0FA04B5EC8EBB63DB1B5DA4859FF1EA46A55043ED6A5007F835745176BD1392FC4D6CED63F0777CDA6445621E73CAE41A3F0B529C44E66B69DCFAA2B257591C37CB9FC714BF27EDF21093C381D9E933BB5E5FD76EFF14151E8D276EA1756E70B225BE3AB8D2DBD720D63ECD266FF8CA79D4851B0F4C95DEC5E8BAA9A3A25686ACF56540FB06D859CD11D2196AF8B78E280546F8F7447EA468D4707DD8D9211BB6663C4D079E554BF8EBAF735BE40D40F7A91B16ECC5AA4396B1072CE3897988442C1754709EDEFF51FEF8348107A004AA47A5420E293A333B2C5CE5A65FEAA1EBCFCF0E377DF3442FDF8AF6B596E49BDB5D92AEF1E4B1A8B9AAB929BA02F9DCE29D20D0295CABDA3D528F87718CEE84B5E5E2A26BC570DA046202FA857BB8680E6A878595D5CCDCE637F77E7CDF0CBC8569F860F69EBEB78C1AF6AD5F40FBEDD3BD04B529DFF567BAB5FD8DDDEC14D77B75EB59D717CA1A7C2492F399ED9787CD43795BE81436C91EEC133ED5846F26BAF5E57FD7DD2A107D58383FD833E6CD68EE09EAB3953A958AB07F14B342C3B35DB613DB35A969E143E5CD66098EF6A4F955078229F028D70359860235A4C56E04B67399A334B6E935F4A5EFCAA5EF23A57E16DF8C1AEC4BA374B9A922FB66FAE0977F4C86F145F0FCF2375931A2C1B24BCF711012DEFE6F67031F099C831F321FFCDB9F8FA5DB86D2DB8BBC98883C7644377DE2D6523EA35965F297F0A5DC1B2C92FBC46023741764D6983CE859EA0ECFA753F4C7A0ED98C01BBAC91C8A47A45F080A14847747002EE873A04E1D329250B2C4BD44F29DC8473F1221988C84ECA1FA06D8CF328637212EAFEE0FFC359C141A14B553895F309891D7A34744DE69A00CAA7B8049A99391AD0F3EFEA97B5285A7072FBF81D25BBCBDE313AEE287563B35E96FD5F97F8594F1309E9E9FB415B90BE78ED4D381B7B1B59B9C3A1CE310803B137D092B2E8623EBBF6C2FB0C5FAD85952E9FF75D91DB86CFDB3B5E5A618D1313D0C61E5701BA9ED1EDB93AEDB685D6F1C3BC7F55AE6D4BDD738B1C9B7D6F02FECC88DAC015B9B96B726F3F8A7E7ADE625A74FDE9900D2A1EE9A690D6C930A3AE83EDA5B623619EE445CF5F4BDFD413B50D81AFCBBF5D4BDDC57C8168F7EDAC529EB890C9C77956B09CF203264FF23A224D1567D9DED67A391A10122E03171758DF9C9E4FE05A0BA064C26D058DA93E798DA6DD4D8758AF714EC96DFD17D8DFC0663ABD117D45E3E9E20BB5AAFB51078DB26BB3869A2CC527716643B22CC1167FB71B0C6E27D090077094E70D601ABB55AFB086E4D7E051A9F80D488C92B41EFCB3D117C922AD741FF231987C8D83E45061A9DE70734C8D07E8EF0DA8F233C1705F46EAB8B8278CBDA87E7AFBFE65F56C5F85830B75773CAE1EA4C5544241704F4787E3E19243BA8E53E78AFDA37F82940480654F4381D6BD203FBD166E0D4CE02AA735E57D12C9D1EAA9C5AC8F17F30D01CB5AC760AC99041BA822BDA618BB16481A0055176A6590B6B4389D98601D7E95ACAA8D0C6BDBCAB0EAB5A87DB4F7F4C9C1A36F9BFFDBECCC66D0403307360FD51283968B4499A2A1406B67D34A52B8E95D755227BCD43FA39EB4B930134DE59CCA5DEA2A1712F5569DB5BD72C2F8E662E46880735FBC6BDE53C73B286C7B72FE2AFCF123CE5B455FFC9F4C2E4386E6D6866CB6E320AD94B93E2A027EFB00B17DF6D8A16737F4DD27A8CE4DD4F5BB724B5F76FEF485DE0A8FE0888059BDB443B26B347820940259AEC7B7B089E1D5FB9D8FCF0FDC2BDF27773F2AEB206B31C72C2B2F6E442D7B3EC66EEB6C440787DEE5A7CDD5B18CB62650CC55B0D184C0C56ED96D30A9507C3903FFAB828CF82A108AA774DF3C9923A754C3350211ECEB90255FB2C4D596AEA3D4E1D7A816D65A2A8A14DBF39D7315918C713261498EF1FF7C2C964C659DD6B86F94BD6F2711348505D283B4549748B167EA1435E59ACD7418AFDDD9702B65DC7E770797B5DABD4698D5AAB7C19AE991FB4663CB8DAD6399DC4C904399220D9A5B0A8BEEB63BA34FEF8C8333BB7471CDCF52CF0FC4BC588C1D11DF02A11222F539F7EC937779B4AECDE46FEF4135929D26E745B3CD718A030E179C26738B9ACA9ECABDD8B8F8CC73BB61CB12DFAA1BC59198439A44781D7F789F56A1F657CCD0FED5ADEA70357226D325FCBC8A35FD7267A6B024F7882528710DECEEBB0D886DBDB6AE2C1A226C612481BBE44EC6B0FEF21EA8DDC0D15145ADB5DCFEA576E0DA7660EC9DF9B3AAC2DE4417A98E45B5B4D25ABFD7809A077A9ED45180FA565377EA42A61E64B16097FCE8BD029E4F14BB634B9945066EE003DC008EA62FA2E5BBD4D2291E689EB987CD47866BBB9E094B40CA89747B260A499464BBF2B01DDC8794EB98CE743C5A2844CC60FF32A5FFDC1EB97C36A22328A72797C2488E8ED9732EF2F23AAEC9ABF224231DB6AC2E47E7E43F84BEEC6CE62A0D1EDABC72B7CDC71F5EF61E3FA127B9F7863A961A24BC03FDBEE7D11B5EAB8DB1D8783EA2D1C8C02FEA44F67A626E77F46871B9D02AA6F36A5AD4C643DC0F1D363DB662CF2211CD150A9C0615E735DA1DABBFEFC49251482DBA0E851D32A6C26313704508BB2636795E3DAAFEA80EF61ED3AC7F8D25A6316F424FCB942885D26619A5BC1F2F4E23C69F3B49AF0CB81F6831E60A0A75FB77851AF3A0CE887A8A962B78AACD1B294783D447DE2038B988E649BB866EE381EF503757676A428D3D391D1994BF60BBDBF1A4182E3A079C28CB4CF94E51BACBE08997B43A5BBA0DB8354830B6968B211169BE93DAB9C3FA452BFC7C29276BCE9CE3F3C52C9CF6D09F841BBF56825A624548083A2934711B542AB9A52E4AFD2A4213063F50ECC0E9906BD9421CF131BF6C37BEA6EE47B70AD48757154DA6035B965EF3BAB7ADF775BC986B7850E6A057F7032C29FADF8C2FBAFF99346815C9E34A037894DF4DA9D3DD556D9FB37AAF5780EF861315E5D4CA958F532A9503D4126AB1C70B18C65D7612F9E04330AC6A510D4E0BB56BED1C3C61F74DF401779927057AA92773CE79559BF51692D801FE79F2DC30666AC149EE5AA8AC54A523D1E25336165671944BFAF44851BCC9E9AD311E0C0741E8FB2D47C6849FD0C1578E57846421CAACE8AE82FC495D3053F54D69656B8EED90A833B13DB2F5918FCC387CA9D3FE14F354DE8B2FCD454A1540277436D5AAAE985B93F3616177BA5A2DD7642CBC173608315760B7FA91A6241515BFF2FEEF619543A64D1015F591FFE1F148C7E9F0FCF7AAFE415FF4EC1F1C485A62FC6708777458246726D35FFCB65B64680C90F8A568724A404555F50648231190B326196DAFC057A8FF789B12FC7063D2D9F9E996F8DD086B89E0E044E2AF70A1C39D5DA4AC6C401612CC4449CDE55381E9047F0B05C598CE56FE40666D36A24C94853C667458C8B5CBD5F996356657359DE88C5A2BEBDA33677A5A73F87E130E527043D2D89C143C7B27D6BC01925FC7590AFD229CE894311934C94923FA5205C0400B4A409390565910816727A68569537A0596E948D51CC54E8E660D86AF3124D66070323257BA9B2F71C6DC4E1249CE94956FA2D3DB33711CA764DF7E998E6DE0D8AE3882B65ABEE50864E99620CB66E7D30E29A3D34A8AD50F4B157458DB1BF854788F073E7EF7561B1AC4F6D04603E6EC651BE2F621B62E259BF2997AE71A109E5707CFF4CB87F22777E370383FA697533CD033C3C632D5019D6C533D2EC75363553473F293000BB73652EEEF7C4E3DEAB17EC26947F9C5EE120800D76E465D735A647F3FAF72388A56C787FB8F6206AF8EC1D72C25EBC413A5FEAC7DB4EAD487EDDC796416C4E8E5F84118C10BF88A1F7081EE1E3C3781F42AFBE14F762BE6F4F6A37FBF2FB97FA1BFA4241113DA23D72A01E9CAA50CD8F70A209A9EA539656626498716CE47466FCFAC3750061BCC5087F7560BFB0AB52AA0AD56098F02367852A98166B8CE352CB8856A6DB0AA7351398F934D5A07BD1BABE67A9BF4C8565E40835D281427C436DBB4B586BE83E176D2715D63CC20F49B85A65B45BF06AF5B71E98AB190814EB9C2525E0DDB264CC80B8E9ABABC927F9719DBC0B9A8586BDDDCDCD16CB083F19AA7A31BE49DBBEDAE65E944CBE482B90909D60EED0A1F5D43005AE26BAD0C2A8538E51536D24515C4D648C95FB10BB8517CAC3C2C6A4C1C88462D8DCC9D08B1D6456B65D6A3D55B6C2009AAF3EC9EC8E443231181268475AD608710DD0AD92BCE42D35E76AE83925A42B6B06C61F711FD9004F048AE3D9D181C4F951F4CDDE31D38D2993DCBAB712AC4B13DDA5E372B7191AA97651EEC666DF363762B3DE929FB7646C92D6860D7C96FFAEF792456D5D3948868C511A2699540D096A7716904178882B3B671B6DFC85A2F77A70ACAC6FF4B654F6731D250A3E64C265BE9D0F0C6C2A4FD6AC56B84E61AE990ABC1B0C26939E8FA379D0B4EFE95CCB7CDCE5843212075341B6F411578A24C3E363160ED086AD930D8CADA2C05355A768D53C3F229087CE5E149E10B7AAFD2B1E94F970CF097947B7920F7436FB4CB41530CFFB47BAE06AD2CFF29609394E9351776B0CC421D22CD48CAE64EFBDD1DA768D55C5E4745E1A4B18400F3BBBC444A0FA43A80FC78BDB723605BCE76A73E2346D6C9B0AEEDFE691AC60D70F25737F5843A7BBA4D014BD5A246EBE0808A51BD1F23C476501F3917532745089DA34BD8148A33655B16B25A8DEE1188D35C2DD71624674DF39A75A311A0D6F46050F263EDB8055F77931B82418A158DA92A9F8712F8C6925AF5DA2389DA0EC224AE93A7D4CA6264A8FD26831E3FCAC22DE73CEC2FA7C48F198FD1551B87B3113044D0F0EDDE3EC78ABA3A35CF38AB779BFAC9C5A15A268CF1B55A840045982ABB0B6252FFBB950DF66901CBB05748E93E4E846B516E6CB99CBAAD6F9D94AF0F091279A52CCBE8F537FD9D039992AE10277E72DF043EA63B2A045CD3F9E5C124A8B904E73A1A77148A02CC6602623A821658B5354365F8E0680E4485CE586813C194DD69DEBCC643ABAB8D5BBC736D986675CBE509DA63B78DEB83A626A9706500A4B89C4E54FEF6A6AAA9312489A7B6B1D41B5D5D74B54ED33835168266702261D36DD5AD6D749E8A19945AE1F2C64B6C04AC93AFA1964236B7E05D63AD03C5560D602EEBB484DCD018280A4932BD95F71911FB145300830F90122FB8342A313579EF741AB1D12659181E74ECC95F9765238D288B35726A41AE021982643CEA2C8415E4D6E91E5AD91B5BBDACA988AFC59CE16A743C81311A4B24EB6CFFB6732BBCD08AB3DC1F423AEC1EE4ACB196BE937474F6DCC5788A28227F99831ED93165D6EAA138B9CFE74F960DB49B2C3042A844C3BD08C992E54F48567138AAF2D9D38FCA8AA643A1BF6F81F2B588D62030B86B3D6777F95A8017ED530A61CCB9ADC470AD6552AC04EDE4AC9BB76CE690976B30184DBD2EB887B7D09AE5C77BFC55A5496200869AAEC54F1CA944E2B98E2B67A971581393B5C0DE35EB4ABD29DB778D76533CD0936B0D1AB26EABDB1FC2A5962635A4E1D6DF825A8DF9B8D738641B03E3E25DA92F5194D0EE9C2484AF279971B793FE69207D051428A57ADF610B0F570CDAED33F8AD6927D659681D6B4043CBC924B1CAA46725F85B33EF553D88238574876B76447DA03CE8D761E7321C519F84D2B62C541C23CB554FE5A31F6ACD87D5D3E6C4FB090EB1371BAEC7471C97B9661948E5D859A60B24B5F9E9D0017FA5631246437D95937070CDCEC45DDA5B9144FF37E5F78B15FF1D697B7A79C2CBCF8E774EDD43138E5372FF0D5DBCCEDE87AF451AC785A768FB917F5AA6EBD738DE5C271837033E5283AA52F5D5E32CBF9546E3DB0330E42CD5942B96EA094D5C6E938D59476F0CAEA4E839547A918A2038B7E6A8D49F2152DFA58E4094A2A1DD66BA38FFAB7E7B27C1BC0165348488A3B3054D23F8A2C7ABC68D957C0FEC99B7187D32F91CC2D7D7698837C5F9788B761C8648EA51F74A1C2A73121E8B172319E16D24149F0DFF189C820176B581C703DF7A5B29FC6FA36A65A528E193F3A5AC03392E2D537045A13737ACB46B392FD6AB393B5178C3A2668F524F1BFCB4B9941B59A6F9F5E21DB603DA0AB84FCCF4CB58782A32D84C0C8E184E176D8E2435A5F76C9D5A1409BB21F8D7F2FEC9E07CC4A420B0F7E30FEF7A1F3EBEE9F51F3D6566667FFF295D62FDFED35C46F34ED45F9EF8A1D949BA16424762ACE8FE7DDBA929D53F482D715941148CE12827FFADD3DE5BF0DEDAB02F0EF8FAC41858CD76FBED08CB968EA38149FB0EA2481C21ED447D5CAE415A78EA0B4E8B02D2F214D074E48DCA22BE08DD839E8AA3D7E6AC880FA57B59F5B128648E161D75C638C0D30CD0F3C3F1D7179B538BBF0C2F38102F139C38176ABA8BCB1E1777917D96E5E39AB52625AEFC2EEBDAAC6385E783517D325E3123964E89161FAE0BF6C4735B5CE22032C8543C593B7F05B6DB692D2E3EA3143A55376DCFC7E70B9CFFACCBE8A49DF33898E8D5D4DC0525235A81F61A9477935BD95BCABA84542AD7581259729320438D74CB627D1091994CE924E213DFF60B3D658FE8974CFE0644D3A45637C6798283F66A2044CA0DDD0069FA671ABA7554BC9C1E528D48924DD1E553FC5758CEDB4BEE5526215F1164C893E5B99C81DD0EEDF96EB99E0736B5FA217F28AF9D0BF51E739B4C81E6F9DB9020F17C0BBBBEEC38A1D3C6A4BBDA16ECFD213C4C1B2D1B41A32D03691CE92A2979A88A1545728D83A29F41936D5C6257FBAE506F35AB7110893A399C14F45BB1B5B76FBE6EA1F5659A7E657A9963A25C90109ADADE86E3A540794BEEEEA296AB7FEC75C2BF73DE9A05CD9F5D2073BE69D08B830DBBAD003F38D1E1DB736E33C57FD1B4D32D706F6616971A287E4D545AB33059326B187D2F2D131A8C9B84A58ABCDAF31097B02AC47C876A1DD44506962215BAD23F65263DF3F02654F06091ACC7A925A48426F2A2C45234076233347E4C029C47948948B7D432351D1EEDF5F708768DF0C7FCFBF1F33C9424ED02F673A6204D7F4BEC90B7C59F302101F7851147325D0A31F42DB7C3A6E11F29F15EDF0AE0AAA85938CA739E9DED6C1DA96466065AA598E9350D9071C3ECE998AB774947A9C71A753873D8265C1C7FF1BCDB3C0D85EE06C90D3B98C2E25CDC7B033AB8BA83D1D0E4A642C9BF8C4FD2FE3AF87FAEC98DA393348B2556DF92269D725D9B24D503F4E7C17EFFDBBF36A449138F0EA8A5FD737AD8333B14B3EB3A7390B8B3858D24D4FFA21E08B177DB14CA03881E56785AAAC45216FE6210454693714A0CAA515F1DCE2DB4BEA243347516C7194621EEA678562EA040F2F74E507790EB2AB71A06221AB89D41BD335EB923326F0111D47065E8F284513DE5DCE016B69D9AA81DA482D10952F26C60E0359B9F92DA09E312E8772FF315EE89D858D84F981E5007565DB585E7CEAD6069F692EE962245DF4815962CCFB812A98850FF38A2781AE7D26BFC2CC15316835A3E51180FABE582842DDB712F16D84DB7744513613F471D75CC8166351EC3D79EFAAF166F57CBDD28F7A00B4B91FEFEBBEA477245A4DB43C1467B2ECA8489BB585AEFDDF636ECACF2EF10077391CD2C08803C2D52ACF31F13AE50DD1EC92399CC9AFE836692C8779160469D36D6E1997BF15B1EB9875E235ACC490AC1C38147CEBC2FFC0BCED6840B6F08B7B0A43770D215F69319B3473318CB6446999F0F517E34FFE87CA635379FC8F0DE04A398A05E8DAE8CD277324CCBC492A58FEBB7EF865A4D9CEB3F41FF0A1699E22E9F3581C9E0389D16CDD63A4F6B0E93275A385675D416A2FFA2FAF51D31EFC347A616FF3EF8F61111CDD7DA1B8455E4670143BB941D47697CF248B08BDE13327E3418D1E5E30638A2005D4797DE09F7E7956860E2188F85278F1EBD0111C8E4B8EE5872F53B72E83D6BCCD0351D9DBE2501D646A2BBD5E3BD3F4C8787CFF9E7E3BDA7904389F958F3842864A8A0D18B5F6712DF462751F9781423F984512CF945E25FEA6D1A4A2C4EA6BBD86614D70B93290AE6EA80B5390A253445FE544ACA495774F06031F68DE8CE01A729C71605D8498E7BB89D4927A90F3F1ABDEAAD18A61B50E74203839765E403C95F5F8D49BF8D470A13554EE627F2DB62EF8596FBFF82F3E7080E83AD87343D210C5973E1F6A70FEDEF5BBB64D5717747BF515CB1B0BD8C523B5C2729EFDBF31DA61736C571CE223B168DCB9EC5A3392BB52228B80117CF8783B255EE6F83B96632A2C2E6E753D8585F13761CCEF863B2A572E9E65C920B64B5EB7FF7F789834EBD92946911F0672D4E1EEAABDA5871A7FCB3243AF62474F26E6376E54754A4558983A13CB44CD0B451E91366D94930B0B208EA740AEB1AD73362DFDAB3E33926C9AB9C26A5B7A5A85805C25CA4427F51402A2EB5B373805AD328B3E7A90E214A75F2C4AD82E20AC730666F17BCDD9D2AAE182ED9A68CCF130DCCC69AEAA0D99DBC9F4D3E632C3438D1C929E9C1F07EE48E14DA0FD45EE74246E911BD5CEF39BD2C6C053ABD7897E40149BB99BF68918981A35941FCAAD05AFDD20537DE40315C63509D036802CEE711C5A7A53CAA5471084C90E43E9C46E2D387AE595DA73AB676165F2476065BD8BD9B3B8BBFEF64944569203AF2FE869FC6F0C1CB1A2271F3AD031E49EAB239FD552DDECBF4FEFF96F3CFB19C8B89E6D42D799DBFFAE3D5391A3B6F4EE9DC29AABA93DF497EF33EDDCA7CFE98BE1A14B02F8A910F9EC2829CEC648C056E2B9C488CA5F038859A1AAA4EA25306AC487C4EE8C85220A1AE70E53B90449CDD22031125AB8D99FBEC4DF694C02E533C1FB39BE92FF266686B8888C59FCAF84462E836A46A86CF4742B39674BF1B68753D23FD6D02EACA557AB9E7F576727F9B9F4189E7BF5B39B6AE2DAC916EA320659F11905E4CFCA34F3B0B67F063718718AC68ED4738137EB8CFEC137B4466A3E532FDBE83C7109A4EFD28AFB88F84BB44CFA883B9F7C000FA1236CDB923758A77AF1603773BDEC8A2C7E8744E909086EA5CB5FA267F2658D288F595830FE23BD8B3A834765DB01553DD2F991FC1CDF5C4ED9AB3121E9530594C7357B94460BBC7352331F936E09DC4A5F39D8D64BCE3B07BBAB2341A6AE6A35326290A5FC5AB09D84871EA43F95A316B58CE5EBDD4C5707AC19630BF5FB64C7CD263A59B1275810ABBC9369D94195F50DF610B124839647CDDE2FDEDB1B79FEF6A4A3E6C7FB77ABA470E2892B4D3A3A305179193505C5A720B77F5F574260E28B13493EF9B548ADE89ECCA3368DC57225FCE7AE1ECE1267B2486193CD667B20BA98C74015D6A8B8ACC08852F1CD3C8D6A80EBC3D9203533DDF3E5820F9356FA0206A7150685B2374239AD7F84CDC3E20CC1E502E39D87B583DE0720C319B2EA9E55C31FFAC759AFC33D213AD2C1185703F4F9158A24D24937A884249ED566FBF7F599D2EA8238D19D340F9C5E58E3F46CA28348C5C0E048936E400107521464EF80B268E331DB9A418E968DFC1A8F6CB8E5A010AAB95671CE37CB6BB53E2CE7EA7AC447A79ED4BB5F1D105D74D2D19237EF7D33E88E3F25553446FED60EC262F1616FDD2D49D25A4E6CA333CE4A2AA2559093763586F6FA3182B79CAC08B36A6D726BF87ED5BB67A2AD115DCB6EA12AEE724786005DD4EC9111DCFD890B5BE05FFD56AB2BFF7EDDE3303E6BB30F4E7B70EF275ED4A5C8FB1D70F2B98FF6AEECB50476E12DC39137AA69A8C9B7708475E0C26DC00155E3E376C3C4AFD06059951341D32B7EA1FAFCF86A461AD7028CE51CE1B70BA12591FE9F0143FAC756E5E34C6DC8BD7D9992A2251E2F3D40B5766DDB3A0108A24E6E1801238B5D99CAF74014BE143118FA1D19074D17CBEA05AC8005B150EF11CD1B35FB8EB880857E936A5E690D7E3D194AA2D02279728ED496C52FB3A8AA685A74F69420A57C58317B5417D17E40CEB141602AB134FE75749B93738D58B4546BD214CBD6811631DC1405B57AC0FB5BD5B1CE15A9B659BF24660A0E6E38BFB63BDD2A848F53DD9EB9797B1ECF5D184ABEE638133C8A5508CA2D6F10AEDB65BFDC0109ADDEA97DDEA83E9FD2B436AC67409C986A0F94FE2E1EA3BF82415DB9E516CBBE0D8E1E7B1CE0E43D8E3E165B823283BDE7CCA8408D9CDE4FE2EB15FFD63AF57FF98546EC191FE2E117F1B46FC889A953674899E3D398FE34E1B2513480C854B912D197D1DE1089A70CAECCACBEE7099BFFB846EE83F1673BDE3A8A8A2577FFCA27AB85FF12BDDA9174D2252F4753353AE8ABBB37205ADAC8635D153AF7F58BEDD633E6D15A2B92A198575EF40B0B87776B2B3FBE489EEA4AF436C7F0E3DE2708AE28811EE1BB7B98D0F7DA263DDFBC6D3C1F1A770A8767663FAC6FB70AF9C430B991A342C626F4955BE2C4859BFADE1BFB84FBDE6B05284FB9E42B24284EBA7B119EABD093389D4DE4160AD9D0EBF52B66FDDE5FD1B938E95864BA978489AFC40B308266C1B43D1F5A6BBB8A697B8A557904934A4D357CA8449EB16CA13611B0ED0DF5198147FA34EB4EDA87D8462099F3BD2A0BA0F587E8FEAD82FAA8E81B480A00249EB342B1289D1A7A6D9650F089750BE049E23FC987951A87D871D108B6B031828D55AEA9ABAA4CA5FDAF32F18A5F4CC15DC45924F3AA3BE9B12D1938A5E1C12775E2ED6DFE8D7CA6C0AC4E581A624ED75D1546A42C4C268BF77F6E35B775B290A5A36C0A4A7558274D72CA8581B20D5636B18E73854B921A948F2727552DF0A2C65082CBE42AE2AC594C18A4BB48CE9503C2592195A030727F6F5EC30D79494D0165BD5C69ADD3A32506FB00DB399C62F05699DD3B5EB8AE9BEE23DE96880C926AFBE1CDDAE691A742452A46347FF0F1126A5967DABBA09730D45AE1F75DA625FD425D7C57602F89F4909C58725DEE2ADDB689DE5F0A8764F71106A6F600D07EFF5F73B5AE96BF520C709C9FB6CB217855EF8A0E247A0C5007CF14D9285B3A5B65F043E0EF7849670AB8E5B3AF020392496ED47E1E1C962CBF2CA347E54A4902ABFDA436DCD15D01532F5AF05E619CFB26B8A12ECEBBD37957B7B79685266E3570C1A9281F7965B6DA177A6063795ACF5CD4E74478A10CA99937D4276A5368CC0DA6DC22D45BBB77CB81F2DDD1F566826C28EBA4159C09C0F26BAE528DA57794D541D85005EBBB14C16F2B0E0D83A2594239195104A191E32F11AF7089DD2ABCD1112FADCC56352D154C232FCCC76DC5FE7F66FA2125D05B6743C4CC42CF8622BFFA405A40676140E6B8739D6900237659DD673ECD0CBB6AFD07BEF1DA8E52F92571865C1D9F05F0BF2734BC7BDEB7061AB5C5CC494DCB1587BF02F4DF7EF827005BB9839AAEF97F9E1696A9DED330C2DD90D98201F0AF0DB86C78BD4D9B95C74734FCCC37D90966345FCCB702A772B79A0D54F856AE8F476451A159D922FA2CBC275BDD7703C55C78D180D0FBD954FA9457F296F323A3CDAE8C42601CA28349BD49E650EDABFED2A453BEE93938B41FD7E502925F57EC94BCE6E1F2EC8C4FEB7582F7F9853564F971758C778C8196A2AC696CECA66850FFA0205AB79A6FEE22EA90C8EC326EDB4CC3D8F49726014D4AD889A2590F4446D45EF434275C4DACA4B10292BA3E466DA5337EBD6CA4FE4FA48B619E642250B221E24DE3AC2DBAD0F923431562A97D4D988B6A638572E2AED6D67D7E9810F69A71C4F222B15B14C260842F0D9AE68DEF32A6A8180EDE905C772FFBB6E4F579E99613A85AEF8D91FE4DCD87874A2F12920D067B52E4763DD7FDBFC9E1F6E246937E8D0FDBFD5CBFED33D3269077B07083E869956543240F22F5403C71C38AB4E0208E58BEE8E2749A2AAAF8D34DC99C6E3FE0572BA759CD6F33F080F34499F6084718A4F635814AD82E44CE9CBC09AE0572A29A0D74ABB1F93181218FC68B3717979AAC02550457F560C1BCF9BA43B00B365E7562F366E782B28CB8111386C613057D356B2C73A1973F2F6DA9CB5918655D3354CBA5F4C8DBDCBA3CEF3F723CEF34B540BFDBEECA7BD7CF3524DCC38608F18485924B16D8FF3B8533B3BB02D2C7D810D55C8F5ED3EC221ACCD99DB157758D7C9EC6EE69A4DA468635DB2BA46AE5742B137AF7F8167BAC08C6E97B53612D7E4AD25554BF05AA9FEFB73C79C5BF8E7521DED7DFD215E56CA5D1B20988F33265D51BC23A125280F3957F9C08DD2711B2A1DA7CACBEA7FE1E1185B94BA50B9ED6E3441996E74D43A4D627109903DAF4B9D04E42007FE9ACEEDA4CC4DCBC34A3587270F7DB83E6A98B1B59C528DE350F2C5E5FC91BE5E5C37FAC0E43DC668A483A2716AFF4715071A12887FEBDCCE3AF8D63A65289EA3B35ED45B2151F6E17F96A2939046295D1C2E9F570FDF2B21D18445B09546BCFA566C55A4ECEBD3C1F548FAFE514C7E553449688CFE729B155A025210E02376BAA4B18624CB6CEE4F0B0D1BAC69381A771ABF0AB5A83A1EC6B2F6BF1DB64A83D35BD55A4A92B89EECEFC81BA82256227095EC3E35719B43C0077DEE4DA7C10DE3B1EDEFD7E9E2C3C59C0A2DD3C6A9198C4B7FE7155F580126AB435E293FD232934EE201E5B5CAB7D34190E61F8ECEC3715FC788B5327DCB89579B3A279CFDF84033F6FE51BD799DB615E96BC6BA7D213965AB8827EC6352B0C392EB5ADB66A25F6CAC5C4B73B13D2E04F7583570A57523978327E5649EDA70C44EA2D1BA4D97D2D3BE4B3A7A9307732CDFFCAC75DCEABDF347736E3EE1A40D85F1FA814D98EEFA23023C70C00E1357A7F48A516798D2B8ED1360A9D7328317F76C69072DDE2DF86715543E143FE46245B8A56C8009C8EAF610BC94181E20EBC7166F0ADF4A3E72BB28AE5C719549F65704743879C45BF831C4C5AA4BE1C84B29C4B0B3680D37666047EE6426C42ECF91C5801D950649CB72E88FFFD6F018DC7098D00A690D669AAA3E53F7B434950BD86E2271221DEB94400BC35CCE5BBF02AE74B9C213EF626BB8CD3EF7ADDF74D0D00AA3DBD40999E58C29D167EF809F66A5FDC1C2AC9D0CAAD7FA960A7D30E0166459F6AE7EFAEE75F532F2D9D5D38388F739ACC03FF79EE0723D3DD0093E26DAFB0ED96FAB8FB21773C61C3C781987FDF8D72B9E106071F84950963730243127B532536ADEDD23ED7D77906969FBF465407A2B04BCAEDAF81B714817F22A42166A4EFFD0CB04D3EBB3BD2A6D97DDB636580A7A2BF198700E6F5B012D5D9FF2A6D04C21B052BDAB2F50F15ED94BA15DBB32DF65861A71A50BAA047D5C0962C7DEE6DA3E758E8E7CF98C7C05E7C8251D59E1B7F0BA560D64A06753DD709BB9EC1FA4F706CCDC42936ADDA2087F45F083F2BDB10698A86CFD255E3BAF1EFC7D343B3A3B23F30EF3105E85D206EFAAC5B1288E97EFA2229E0C7EE73305BD3AEF0AB0F5B5A9BA36660E59465FE423F4BF794C9FC125E142F5BA7AF0036CF0647FFFE0194B505AC11393081330282E22757A60AE2562B950D8363A2A3A5692EAC51FA29EA47E1CDD8DC1E0B3B8E827B6A40F6A7DE2302B1E6E948175731AF01B84094F33A3A145A0DF77E21640579A3E1D51F7B475FBE8AB01A3FC9462B97A01FDBEC3442FAAA78F811DED2021B0B456CF36AB19E8C030546BF6CC011F02EFAA8D8803F4ADCA273150D787B8C290D293B00D3B101B09BFF9B2B1A56D6BBB523AFD874FB26A79F046845B7B70F59D1ADABC379DAE774240F76F2924C6568DA1E744567FEBA37A491018E1E3B6FE1A0FFA3B9BA57806C3144DF2B7100338A6A8207A7062735E19DAB175C298FFC80BC63A38BCE3637C2FFF96E64CF1B1BBAEE8D40D32451134D5F43097D8C3D1F902199E0CB96017877846355DECD252CD698E78BCA3C38D090FFBEAACFA50E2206D291BB77C13771B302C470DCB66F64B6A81FDD5580FB066C3D305A198EC86E2A85CE4E5A69EBF6421BA050D3ACCA7F224A5253960D6E7D93FAD170FAFD7DE4AF7E2B5C8BEA10AD2C16814A5F33F8D7980596A6DB544807A09DA7AD4B2D8833E33EC68DE4A82387943094DA98A89F6A1A911B586EB6962A03D75CC27A2B88EE7BC49FDE3472C088C0A0AFC262FFA0A73AD9098CEBF9816157E1030A9C21DF8DA8200D70B7F83950F97D01A3DAFD83ECC5DBACFCE9A5407CD499A6965D7416C0F3C2D4703955BECBB16DCACB04914CB6C087905CCBFD41F1ADEDCE7907BC11B2CDF0266ECDD02C8008B410F4CCC56A85D6BF2C809FE734A4E25106EEEA6EF415850AA561ADD40076345B004616C2CB19F7BD56F3E8CC20AC19238CC7A34B1CC3A3BAED72E266E84B68439CB2B5355DE3F96DD91E480C309C27CB17716D239182454E38435F081665044367C07598EED882333CB45EFD91D2F08F3BAFE302B013DBB0515967CAE245F27381260BAB5718EED8FD19582E37CC4118D0280396D0D42E7AA8825A2044520123F2973F6D5D6B3DAAC366E4DDF007803ACC4F0B2AE8DFE0DE730A988904504D36BA55967DA7232EB370DD85AEADC3889E12675B3AF13DAC5014DD62189D25453EBD3E7C5338E9DA2491AFEEC9A76BA7C747099EE8E70E05B31875A5E8BC8BD41F12B9D3D866375E5B354476AB2C33913E4FC091BBA78AA1E2F423BF9D3986F1F696DAED7501AD94AE664396351A712D6D1AB1544E0B013B5E12816EC2B3A7548D25CF212BA4C363AA4EEA694CA43B8824359196DE1A9E0C876C7D235587B771D1A2209AA6C36BE6F1357889B9C8C00DBADB1B551B436E62080A9B41A6737B837CE714F4CECCB5C6C2E34B618048A99482813550ACEE84C66DC74855CAAD4F61CAFB50C60344753C7CFC5DCE6919B92A8430669FF844A0F1CB4224ADD5F18771FDD389E0DA4A0F005CEEC50D0F030F025E1B909AD74038BAA729D71CB290BA326878446E1DA5C9B05C0C4D7FE32D84400EB18BF9DB2106FF4484E158CFFABCE1B2A5F950CBAA81A8E23822AF3C5B33745A6F6B64A0F777D8686D93F4652DFBC2BE3A637A49C9D37A3BF33BA38DE126858F18C5FE06D6F8790D44F86491B9748793DD4350432337E61DE773CD4C2467A01905C9346A8F1D1F14DA9798D3F0F742EA33AF28A9F354CE6896F7BC339FF0F9937E2643AF0EDA9933CF147BD089ED74854C169C62A05BCB3D1E23CAD209852BCDBBA8A5B0830569B46BE04BA9A1B6E864CAAC1A5CBF68E3FB30D4CE8224FB87C4BD656A85CCC9D5F391AF006D71C74B690E42A8561E022B74CF737A8643A861FC8D9E563AE5DEE9119A607F4CB604C9B559D7B78F6A477902EC5D3D15E580BAD5A9DBF3C2BF078BDC436321944ACBD88B447F58DA6934B2A38A9E0C64D337634685AA4E78B6022F5EBB7F0CC3426DC15726CCFD22050990D8D01AE8B6AC5AF3AFA4BF8D665E178E21AB836BA14D65CE948574CD5B1639FBE7013280E69C271657301BA01254E1473ACAD6DB7C85ACF3E0B1B50CFCF7ACB11E53F52468BBDFB9160D9AEFED98A4D8212C82D8523F3004D7A4821C9692D8B0F2465D23B4A1E7F76C1F16BC84F73D7BD66F559BCC43734844DD5F5B546DE3A4AACE601097DF3B65A8B8554E9AA5F920CA8BA16C937A28EE07505E25E676970E495CA005A086733A5E31A6C6F565FCB29E82E3ACD3DB5895C5AE5058208DE2C6F1AFFA090B19658B6A7135AE8A18CF69C067CF6A490B95F3412C938CCC03958E17FCA9F9A267AAA5990489F770BEC30234963C496B326677BE3E9E9624BC526F03111341040EC9CFFF869717EC8125A8CABED9DFA309A6EC5AF026185C57C9EB4769B91CDC2B59E6AF8EF3D7DFF09C0C99ACD8151A331FB36BEA13EEEEBAB4BA96B99D068A07B430DFC05225EDB74A520A7652F33966F85928EB269C054D1C88C213D9F98BD7DB3881C806CE5382CAA8372DEA3874BC6FEB713BB23C2E4DE1AB05F61C250957A244C4E42FDE1F48FADE05D2165546856E6BA6B88EBB5BA609B0DD3876C603BE868A0988D0E69FEE9A1F23490B820EA2FA9E11317243D5427CDDC8AD005B12600B7E31E6B349DED7BE1132D836BB13503462B57E22027AE2551F23C5390FE9A6121630E6999EE7A402A476E53C279BDFA7680E7615CBE853E8FD62A807F9BA67E457F83F6A94095358B675B6AB45E7F1DF44B498E36A923DCE82C92D344063A6FF945F5DF9EC460F6B87F09362758708B95450FFED1889506759977F20B9624663B947D2670C8A7F1B306FC3BDE01A91245400EF42C94EB647E238A961964B30650679E1359669AAE50D8313B2A4E9A030444CC5BDE0E70BD7909F2F72E827599EFC632B1812B1A22FEC0AC9CD43AACFD0460675369B63455624B6066D45C96A1D1A77714EF6DF3C72D49AE7902AA7020934D6C07465C71D363E4A6744466C70F71F14D76AC9C02D540ADFB264B2DAC0CBC53E3B99B6E0F655BE20EA493707C94F1D2D4BD868A5914D30D3D7C4F0B3745796AA9290BE6A91E5D36DE12270BC5189A5EDF138B9478A9BF7117D98DD1B12C985D414F5AFA2DFA405FE5409DE1F28848DD95395FB8E7348D7490B723D5952A23FE1D675CB577851CD48BC3BA1FEA360C471F9B1D947C7DE31287AB44AB22550E43B5CA3DA8AC0ED32BFB1EBBF7C863722A4A6510542819AF9A48DE1F316A5BFF9351527E3EF22EE2A7CBBA65A14C538B3D222DE128BD3899A68511A2BC0076F1765CE41B9CBA7AFEA3AF79CD691989D4FDE3AE839065A1D1A52F5D98AC07B9B6381067AED445709A7FD229AE51BACF9538F7F5EEEFF55B53ECF47605E7705B2EA70B4E502A9C4B02D7457F65ABCA8A64DB158ECCF4AA90C65F232C0B7654F0104FA40E2B3BD677732D84863A942045197E5DED483573577280787B3F4A396CB4F01F2C512AE2B7F189B95FBBD16337D63A1B6C63286127D153352DDC242FBDCC3DB1C9150C94B9DA6F0AF9B3FEC956643BE58B25223E0C1FB5A0B51462FE3877F34B4910407911BCEEC532C58FA747147AF1A97853E1407711C2CC7698863B81463ECCA23E05552CDD0147648B6122A117B37A380B41143C8EF297945184876D3425ED651CC8B2AE4016DA2C524E51E85471965A7A7283481C6F87AC339D34E6F613B5F9B4D8467F670D3D277572BCB004A6E7D96D4B30D6A069D95AA5DF738F134189DEAF6B17E20E5E3CE958E6391F4DC097A47DB776F349FAC480FB071FDEFC408F5ABFF7A65313FB5A642C5E97414A64F0B74348B4E053DFA023A66C137ECD813BF8807323A1F4070B1279107124F7BE850B694F857053B540B6D966191F7AB808339FEB28370B607F68663FE5461EB55F4B33C13CF2ECE3626C4D8948A9034C19890F69D910BD32DA987F0E17C08F4CD5F89025EC70311A8BEEA0FACA6897F55747B1D293D5FB5F7EFE1FDFBDFE58FDF8F297BF57F9D1744AE55360A6FAF8DDFFFCB81D469BB89D220D97CA354EE2EB3A849E63330194A4CE48BD6D292382EB11F5916DF1DBF1013AC865E5A4797D9650CBF8384F66F3D0053233DCA6465AF29CDA60F844E42CEAADA6736262518FA5DE0E0990D501AEF47C8181BF83720972CD5C3585D283DB42BE0567794C8079490A45EFEFF259024D2D604A14E2963528CBFE3280D01D8AC86ADF27A8BDAE1FB01D3E1AEEE68E63B872D8D3AA1DCC88EFBDCFE6E9ACB9DB7BDC164BDBF2C71BB5D2E77E86434EB9A58BAFE87AFCAC6F92960D86B919C052B6E0B080F47D1274BEF1C4892CA337E4806D61CB84CC38CDCB76E9687F4E2FF540E252261B0517B74C6C8E05526EBF47157152662B7F59D088682390B3FFF9891645B7690EEEF40B29D0E11C11E6E552E700EBD474EA59032E9BE7744440DC84FAE1070DC3FFA8D4B6C09E2DD45D85BA451D69F4FE719EBAE7165D556B892AD480CB83D8A8A1AE884385FB00D27F0D67533553E71E9DAC6AEA607B3BE6C9F8EB06036FB39566864E42407EE4C608EC1A228669A5129081576B1B58737F68A0CAF8E01318897B561BC4BD55B0A858B3C4D9CDE0AC5F99D309FFC88DD06216BAEBD2F982FAB94DD06EA11EF376737F17D4A6C5F033842D5BB3A8FA492B25E3EB5633A3A726A8BF4EC6D47D349A6319CC034EC2DEF0A7AF8561891A823A6C5F813C8BA23A71C48E99D00EE55DB8D470AD9BE1774E6B5DE9ED7D884E4E7FEC00598311F4C026BC76FD606DD0F1CE72711DFFE4845B12E0204761928467AEA4F7FBA9817732A58F0CCF18B4F81CF553A6DAB59A9E4A07EFFB01EA52CB69AB6AAEAA7B3678B10C5CE65E914B7FD775A16869BB19C2D2CB0AADFD2E3AEBEB55288551B4FDEAEDDC02716BDBFD959EA8B5078AA6EED27713AD10E0267955A39BD6F768664CD5C6D4BA51EF34A935741E3F4292D4A0CCF97BF1743E46505D77C57C6AF2AFB7A5C6FE205368C0A5BE7F1C054DE2E50C1F8D50C16969332D22ACE9E8FF99017A0D06726EA691837A5420FD847A5FC7E95BD3E1CFD5A7DCA42C9F381D41FA39540A9196A435D04242B7C0C98D97168BAFA8FBAF2FE9850AE76CD9E9AA8AFCF7E914644DC83BB2DC7A595DCB8C426FAB233E91134075B589AABC69775659FACC8563D0E83E20908B70C3652DC26F4408FD30DC933957F6B66310608DFAAB9BEAAAAC48C1835B8CE13205D197D1DBE6AD6B88F657982F54387D904DC3B33C07DDCFC0E95A9DABD0D4B1E97821492A9094440501C80D80F808EA5EF0581E2B59A92E5122ED26E16DB3B4AC455A9084D1A50EEC0B94B54E2524C265BF46A7127874130A97CD68ABEF95191EE0C13689174F8A330DD9EF89C3101E2F900EA3A4E31172AA155857D9A2B4F9AC75F2C238E2FDA7A09C069CE40C88AF7841746176598C219F3A93B1B3FB6F399F4125E1CA87FB33B7FEA2B1CCF2EB95F7A61128E99A5B61BCA3DF0A25C33DB12480A87840031DFB461C318F6428483D71469DF9194E40EA29DFDFCD7FAD033C575739EFDAA444DF595D2C882659B919056F4759BF4518858438DC5D030153303E59DF9190101612FBB770D1D2088C40AF5114FD56AD6759028D6298B210C33C043087F411BFA8F6C586F8E3CAA2E89E97FB68974AEB70450467B98765B3F25B4D9E1569E31BD1A3F6C66F45E010A97CC88E319B7B9C338D1BE7AD28A8B3D26EAF634AC8884EBFBCA80FB6462486734998A538F5C1CACEF07E91278BC66632922D1872085A2B2579FE11D1D489A7D020644B7CE6D66EAFB617FDF49ABED5A168F4BA6908DB01D9FE77195BD1E9A6044B172CFDBE8D8BD6C9A8561779527A0E14138DCA38F343781D62E81CBACB58E5270384ADBA6B4184CC503E97B702BF4BA77DAB07ACE9625451B660C44A7872DF3EDEEFF5AB744EF8E095F178F0BA91B3BAF5AAC6B78A573A1D4CE04E0FBBC450CCDE9C17CEA7856B9ECC77812547B0F163A095A2FF7C6B5D8B60857D69635A7966469DE616321169744961F7F9CE87F8AAEE2EE3AB4D06256BFB8C4F4E55498012630753A9C932821D1A4B41E503B8F35CF39E55AE613C658A1568CCDDA317172D200ED331D9D3A1A0B3F8280828FCE3EAC121969C9EBF1FBEFBEE3B86683043B5A44D83FD108FACE4127CA9E971854A23E5306B97CD7FDF69F3BD227608A3F9C056BE6B001629720C24858F947351A6AF66E59FCED2CA67771369C099052B2D2009A659328DD336B222B99A4F4B2A240ADBABB5321EAA6FC8AC3F632C55810E2F72315C70B297F48867287EF7C7053CC746A0D5FBF80645301EA0E671A1387FC81D2E6042CAFEFC45D57739A451C59893E31E1DC3C7D0A61F047BE445D8CFF0F8937FAA71159A0CF0BDDFC332D22DB15FB5FC478196E6DB04E0862020DE1E73DA3523D913987FCEA904BD56D34DE3B593214C05759C789C80C63466D6C795349E920B15A9EBD85FD13953A16FBD4DEE34FC9253FAD478224F5184DFC199B5CF1C7D91409B42E1BC2701BF25A8B217B4ABFF430E798D6775CD89564C1259AF434971734D179A122F57D50BE0AA25BBF9D4E2C993DB64073ACA329556A4E96392195922D80507DEA79063CEE20B66C453D1200D90660D33AF5E99186E39210F5BCEAB50412FA7569C97CB591901023B62A69D4FC0DF5E4C289387B743C245E32B5C31111127DBB7D4671F801ED8564FC76F7FFE29EF8347D685E9C477A7EED59A7FF7EE9E8F79D7406F3AF1AA7EED760E1106DAA4FF3B1CB2FC821406605A48449BE012FD903EA73AB9452602A8B08F28E5E5782AD9FC3A4727910D5769E7F9EF85A16BB70C90D9656050EBC0EB5B653EE3A34D90752D5B7D605F3703B4B35A80E0017E516FBD5224A90139510694E7950E88262E2EEE232B8F9DFA7C893C81AC2C955B1F6C5D08F6350EF5DCD542F67F9152CE218B02185569339635DA8F7333DC00D125B6BEE969980C5F5C5338B791C32635466EE56DD0CD74F1D0C60D6E5AD8E8E40B118CC2D53582985576C39BFDC2CC1398FA6E106EAA07FA667A33FA8B7A6DC2CA3ABE6A395081E8745AACC47398A7CD985D35E67539302F2688311534CFD15F7D6BC8F26CCE7CDB50DC84B33CA8B2A572EA919B69C4661D3736DC918BD32A95C898D5633771D33080D8D650E5FA2E691CDF01B21546D5F08104F5A6273D4E1E9459229B88BAB6138B1329E27CF9CE90BA2AE4EE07C5C5AC9FA6D075F979EB0E87B53A4C9B117C29B4C53FA51ABE0EC0B62A8A42E31A207F70E34AEE6449417D5E04FE8CE6ED96BEBA3B305ED4E0A40E1A4313D4744C6248E9219446D231F7A2044700BD1DD85703AE6C274A53EEAF0CE77EF3E7485DFAFC9E612B2F123BA158A128C2E03DA725C081B575C2A9EE931798B14D1879D88E79D75A9604170DAB652F40824A9F62E0A454F807A7CEEE9F135DDA0CD749679FE73E723791B7DE0006B3DE804113448B49CCEE2AD45A82CA191B6C99ABAE0E38B7046B5B0FC1DABDA08678EE7A2EFBCFFF032F24B344');
INSERT INTO "frozen" VALUES('a4a053b1dc856f2683c6518088a7b88ac638ae0ae252eccf91647f32243c7bd0','revision',X'7B22666F726D6174223A312C226368616E67655F736574223A32342C22646179223A22323032362D30312D3032222C2273636F7065223A7B7D2C22656E67696E65223A2236313062316532656436313334303136643730356564323234343738363733643964353563373738353630336437363133643136353563313762666161353564222C2270726F6A656374223A2233333832383666613934303137646263306337383261396230666530633730376433613532343862633661313635316136303861623137333964633733663936222C22636174616C6F677565223A2230613166643338353731396634343364353865633862643137613062336263343666336465633664663535363965313334353139323038663136383234636331222C2272756C6573223A2239636132376632386333313333323339316632306161353065393061303435386363306166646262636266393332363935653935383931636231306164653363222C22706F776572223A2265316236623866356335396265393062356162623137373833636638356230383231623039333734653632366430306264353536396130353636653032643836222C22636F756E74223A322C2262697473223A302C226F70656E696E6773223A7B2230223A2239333164643665663737343336313137373835383836363932373133623562613365643063646332313732336134666439616331353236366635373261336135227D7D');
CREATE TABLE hardware_set (
	id TEXT NOT NULL, 
	version INTEGER DEFAULT 1 NOT NULL, 
	name TEXT NOT NULL, 
	notes TEXT, 
	CONSTRAINT pk_hardware_set PRIMARY KEY (id), 
	CONSTRAINT uq_hardware_set_name UNIQUE (name)
);
INSERT INTO "hardware_set" VALUES('56161b6fd65e4607a7dbf9ffb7263c61',1,'HS-1',NULL);
CREATE TABLE import_mapping (
	id TEXT NOT NULL, 
	version INTEGER DEFAULT 1 NOT NULL, 
	fingerprint TEXT NOT NULL, 
	name TEXT, 
	mapping TEXT DEFAULT '{}' NOT NULL, 
	CONSTRAINT pk_import_mapping PRIMARY KEY (id), 
	CONSTRAINT uq_import_mapping_fingerprint UNIQUE (fingerprint)
);
INSERT INTO "import_mapping" VALUES('c5bf0a121aec4cfb8fba1fb5dea4faef',1,'f','Doors','{"Mark":"opening.mark"}');
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
INSERT INTO "issued_packet" VALUES('8afbb70a0df24f68a9ba1222e12a0969',1,'0da0698201054b2e8c6460430f121ca2','2026-01-02','keeper','case');
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
INSERT INTO "kit_content" VALUES('5e75fd7cb68740f28a9b7840509f000d',1,'15d25e960e1c43cab691845496d5303e','S-1',2.0);
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
INSERT INTO "leaf" VALUES('16b8797cc94842178fb82f3b567b9bc3',1,'0da0698201054b2e8c6460430f121ca2',0,'active',NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL);
INSERT INTO "leaf" VALUES('852e9780efe04eed9a34ce99d9ff78d0',1,'0da0698201054b2e8c6460430f121ca2',1,'inactive',NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL);
INSERT INTO "leaf" VALUES('d0edd681c404491aa5836ac1033d219e',1,'140d737f121c467b9f982877d1b667d8',0,'single',NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL);
INSERT INTO "leaf" VALUES('86950321d83f46a5b480da8a9a3e3090',1,'10d444cabb8c48a7920f9242fb11b6b8',0,'single',NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL);
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
INSERT INTO "level" VALUES('6e688cb345d04aefb95c8f59218d4d09',2,'2592f37c98564a8291d1db378ecbf9dd','1',0,NULL,NULL,NULL,NULL,40,NULL,NULL,NULL,NULL);
INSERT INTO "level" VALUES('586e433dad4048539f510d569ddc95c2',1,NULL,'roof',1,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL);
CREATE TABLE lock_point (
	id TEXT NOT NULL, 
	version INTEGER DEFAULT 1 NOT NULL, 
	opening_id TEXT NOT NULL, 
	item_id TEXT, 
	CONSTRAINT pk_lock_point PRIMARY KEY (id), 
	CONSTRAINT fk_lock_point_opening_id FOREIGN KEY(opening_id) REFERENCES opening (id), 
	CONSTRAINT fk_lock_point_item_id FOREIGN KEY(item_id) REFERENCES existing_item (id) DEFERRABLE INITIALLY DEFERRED
);
INSERT INTO "lock_point" VALUES('0da0698201054b2e8c6460430f121ca2',2,'0da0698201054b2e8c6460430f121ca2','0429ae9c8d4f4b2c8a013a2cd9efc2f8');
INSERT INTO "lock_point" VALUES('140d737f121c467b9f982877d1b667d8',1,'140d737f121c467b9f982877d1b667d8',NULL);
INSERT INTO "lock_point" VALUES('10d444cabb8c48a7920f9242fb11b6b8',1,'10d444cabb8c48a7920f9242fb11b6b8',NULL);
CREATE TABLE office (
	id TEXT NOT NULL, 
	version INTEGER DEFAULT 1 NOT NULL, 
	name TEXT NOT NULL, 
	text TEXT NOT NULL, 
	files TEXT DEFAULT '{}' NOT NULL, 
	CONSTRAINT pk_office PRIMARY KEY (id), 
	CONSTRAINT uq_office_name UNIQUE (name)
);
INSERT INTO "office" VALUES('ad6fa718cd784af5af84eaacd28441b3',1,'office','format = 1
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
INSERT INTO "open_question" VALUES('a34665c9189641cb8a1805f90279110d',1,'3e63e593bb614af8a5a0230021e12da1','0da0698201054b2e8c6460430f121ca2','blank','0012','hand',NULL,'{"before":"LH"}');
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
INSERT INTO "opening" VALUES('0da0698201054b2e8c6460430f121ca2',6,'6e688cb345d04aefb95c8f59218d4d09','56161b6fd65e4607a7dbf9ffb7263c61','0012',NULL,NULL,NULL,'LHR',NULL,NULL,1,NULL,'key',NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,2021,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,'{}',NULL);
INSERT INTO "opening" VALUES('140d737f121c467b9f982877d1b667d8',5,'586e433dad4048539f510d569ddc95c2',NULL,'9E4',NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,'{}',NULL);
INSERT INTO "opening" VALUES('10d444cabb8c48a7920f9242fb11b6b8',2,'586e433dad4048539f510d569ddc95c2',NULL,'W7',NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,'{}','walled up');
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
INSERT INTO "opening_fit" VALUES('0da0698201054b2e8c6460430f121ca2',1,'0da0698201054b2e8c6460430f121ca2','case','9f737a60efd3e7749fca3581fe60d2792f2094640b394a4735876f394448155a','program','a5ca83876477bf081178c26357410b22',NULL);
INSERT INTO "opening_fit" VALUES('140d737f121c467b9f982877d1b667d8',1,'140d737f121c467b9f982877d1b667d8','c3958cb63914e37cbb2515bb228775eff6bbdf3376a40d5a68374065f72a2b88','4d1a5b681209a263fbb5d5c98b568915f236ffecd8d4f070f0326407c934a9cc','fc4b715b1aafa8eebc4b1109ae148987','84d8a6f668ce7b7e99626905490ca049',NULL);
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
INSERT INTO "own_field" VALUES('24d07f92ebd64899973ed3bf696c1ebb',1,'existing_item','key_group','Key group','choice','','["AA","BB"]');
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
INSERT INTO "part" VALUES('15d25e960e1c43cab691845496d5303e',1,'C-1','mortise-cylinder',NULL,NULL,NULL,'EA','12.1','USD',NULL,NULL,NULL,'{}','{}');
INSERT INTO "part" VALUES('283acfc1f0904b0a83504ce278c4be9e',1,'U-1','surface-unit',NULL,NULL,NULL,'EA',NULL,NULL,NULL,NULL,NULL,'{}','{}');
CREATE TABLE person (
	id TEXT NOT NULL, 
	version INTEGER DEFAULT 1 NOT NULL, 
	name TEXT NOT NULL, 
	role TEXT NOT NULL, 
	CONSTRAINT pk_person PRIMARY KEY (id), 
	CONSTRAINT uq_person_name UNIQUE (name)
);
INSERT INTO "person" VALUES('d80699575440407d8c25a8dc5b35da06',1,'keeper','specifier');
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
INSERT INTO "placed_unit" VALUES('666da402f6ff4b9fbae32319a6f103ac',1,'0da0698201054b2e8c6460430f121ca2','0da0698201054b2e8c6460430f121ca2','active','inside','above',20.0,1100.0);
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
INSERT INTO "project" VALUES('720d6fe3d7a54d30b93bebb945ab73b9',1,'Saved yard','2026-11-29T22:21:44+00:00','mm','mm','{"time_zone":"Etc/UTC"}');
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
INSERT INTO "revision" VALUES('3c8811ca7e6e40bdaac51772b487e149',1,'A','2026-11-29T22:21:45+00:00','keeper','kept','{}','a4a053b1dc856f2683c6518088a7b88ac638ae0ae252eccf91647f32243c7bd0');
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
INSERT INTO "route" VALUES('a6b1ba6a4e9d426f926a1aa6608208c7',1,'0da0698201054b2e8c6460430f121ca2','c1c88c713e764e8385eb3f605a3491b0',6.0,1);
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
INSERT INTO "run" VALUES('d6c2145b3bef47ddbc028453c905e9d9',1,'e7748affed4e47b4b2b8b04832a0a9c4',NULL,'supply','J1',NULL,NULL,NULL,NULL,NULL,NULL);
INSERT INTO "run" VALUES('c533561558314afa8e602e1f3550559f',1,'e7748affed4e47b4b2b8b04832a0a9c4','0da0698201054b2e8c6460430f121ca2','J1','0da0698201054b2e8c6460430f121ca2',4.0,NULL,'18 AWG','solid',NULL,NULL);
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
INSERT INTO "set_line" VALUES('43bf4d78f25441f9aa2d7526e27d3fae',1,'56161b6fd65e4607a7dbf9ffb7263c61','unit','U-1',1.0);
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
INSERT INTO "supply" VALUES('c1c88c713e764e8385eb3f605a3491b0',1,NULL,'Closet',NULL,2.5,NULL,NULL,NULL,'laid',NULL,NULL,NULL,NULL,NULL,NULL);
CREATE TABLE table_digest (
	name TEXT NOT NULL, 
	digest TEXT NOT NULL, 
	rows INTEGER NOT NULL, 
	change_set INTEGER NOT NULL, 
	CONSTRAINT pk_table_digest PRIMARY KEY (name)
);
INSERT INTO "table_digest" VALUES('project','3cc5f15809fcb7f8',1,0);
INSERT INTO "table_digest" VALUES('part','f62ae053b7a2cdad',2,1);
INSERT INTO "table_digest" VALUES('kit_content','8ad68ef89db6a271',1,1);
INSERT INTO "table_digest" VALUES('building','be4795f3aaff46b0',1,19);
INSERT INTO "table_digest" VALUES('level','1092218d403371b1',2,20);
INSERT INTO "table_digest" VALUES('opening','fb61dfa81ca3688d',3,31);
INSERT INTO "table_digest" VALUES('leaf','e22cec118c127b1d',4,14);
INSERT INTO "table_digest" VALUES('lock_point','389679ac2c50a464',3,14);
INSERT INTO "table_digest" VALUES('existing_item','f895dc282e6c4994',1,8);
INSERT INTO "table_digest" VALUES('chosen_part','630490ed95186a4c',1,5);
INSERT INTO "table_digest" VALUES('placed_unit','0684367635283533',1,6);
INSERT INTO "table_digest" VALUES('own_field','a908b0f6b92175a6',1,7);
INSERT INTO "table_digest" VALUES('import_mapping','ee4ffffb1e49db80',1,9);
INSERT INTO "table_digest" VALUES('opening_fit','7e45f869052ad94e',2,24);
INSERT INTO "table_digest" VALUES('supply','3b2c5d2e766224c0',1,11);
INSERT INTO "table_digest" VALUES('circuit','b1381036172bffb6',1,11);
INSERT INTO "table_digest" VALUES('run','a0b176023e1c6c25',2,11);
INSERT INTO "table_digest" VALUES('route','d36c41f336b3884e',1,11);
INSERT INTO "table_digest" VALUES('hardware_set','904111ad177d25f2',1,12);
INSERT INTO "table_digest" VALUES('set_line','170594fe75c93986',1,12);
INSERT INTO "table_digest" VALUES('waiver','5cd24124a458e49a',1,12);
INSERT INTO "table_digest" VALUES('issued_packet','6d87686fb012682c',1,12);
INSERT INTO "table_digest" VALUES('assigned_part','a2740abced5571f5',1,13);
INSERT INTO "table_digest" VALUES('delivery','d4ddb5e37a019505',1,16);
INSERT INTO "table_digest" VALUES('open_question','cc90bf16c8baef9e',1,16);
INSERT INTO "table_digest" VALUES('transmittal','58d731fba5766484',1,17);
INSERT INTO "table_digest" VALUES('office','c1780676d956d4f6',1,18);
INSERT INTO "table_digest" VALUES('person','970659270f6e9bcf',1,22);
INSERT INTO "table_digest" VALUES('attachment','d3f8f84df26f134c',1,23);
INSERT INTO "table_digest" VALUES('revision','2e06a3c8c8172e4a',1,25);
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
INSERT INTO "transmittal" VALUES('31fa2612856c47379b22f641d9005a7d',1,1,'2026-01-02','keeper','Architect','for approval',NULL,'{"schedule.pdf":{"hash":"c7833160c63da29c02cf51b6bb898cf53137ae144cebfe2d8ecece1de0d67699","revision":"","size":14}}');
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
INSERT INTO "waiver" VALUES('54d750dada2046b29610a46a35cbf8ae',1,'0da0698201054b2e8c6460430f121ca2','hand-known','','opening','f','keeper','seen','2026-01-02',NULL);
CREATE INDEX ix_change_set_who_number ON change_set (who, number);
CREATE INDEX ix_change_set_target ON change_set (target);
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
