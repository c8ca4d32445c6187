BEGIN TRANSACTION;
CREATE TABLE alembic_version (version_num VARCHAR(32) NOT NULL, CONSTRAINT alembic_version_pkc PRIMARY KEY (version_num));
INSERT INTO "alembic_version" VALUES('0021');
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
INSERT INTO "assigned_part" VALUES('bdab01481a2a4c12a6709c68d3b74c6d',1,'babe6beef64141afb9a9ab338e772be7','babe6beef64141afb9a9ab338e772be7','cylinder','C-1',1,1.0,'by-hand','SN-1',NULL,'planned');
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
INSERT INTO "attachment" VALUES('494eb99347144395b651a2e5e1ac151e',1,'opening','babe6beef64141afb9a9ab338e772be7','babe6beef64141afb9a9ab338e772be7','508b7b1f113fdf173660d2b3dace45039a6d28f00ee27382c04c93af8213e4c9','inside.txt','Inside',NULL,0);
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
INSERT INTO "building" VALUES('34fb9ee21cbf4613ba728b46ced9f67c',2,'Mill',NULL,NULL,'B',NULL,NULL,0,NULL,NULL);
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
INSERT INTO "change_entry" VALUES(1,0,'part','43b5d2cd4d1a4a8fb364385ee80241bc',NULL,'insert',NULL,'{"currency":"USD","id":"43b5d2cd4d1a4a8fb364385ee80241bc","kind":"mortise-cylinder","list_price":"12.1","number":"C-1","unit":"EA","version":1}','test');
INSERT INTO "change_entry" VALUES(1,1,'part','f29a51c374eb4f9fb255f89556eb46cf',NULL,'insert',NULL,'{"id":"f29a51c374eb4f9fb255f89556eb46cf","kind":"surface-unit","number":"U-1","unit":"EA","version":1}','test');
INSERT INTO "change_entry" VALUES(1,2,'kit_content','d5ab62bb71484aaf8ad8c2116806c26c',NULL,'insert',NULL,'{"id":"d5ab62bb71484aaf8ad8c2116806c26c","number":"S-1","part_id":"43b5d2cd4d1a4a8fb364385ee80241bc","quantity":2.0,"version":1}','test');
INSERT INTO "change_entry" VALUES(2,0,'building','34fb9ee21cbf4613ba728b46ced9f67c',NULL,'insert',NULL,'{"id":"34fb9ee21cbf4613ba728b46ced9f67c","name":"Mill","version":1}',NULL);
INSERT INTO "change_entry" VALUES(2,1,'level','59d745a448eb4f0d8431a0b7f05f01c8',NULL,'insert',NULL,'{"building_id":"34fb9ee21cbf4613ba728b46ced9f67c","id":"59d745a448eb4f0d8431a0b7f05f01c8","name":"1","sort":0,"version":1}',NULL);
INSERT INTO "change_entry" VALUES(2,2,'opening','babe6beef64141afb9a9ab338e772be7','babe6beef64141afb9a9ab338e772be7','insert',NULL,'{"id":"babe6beef64141afb9a9ab338e772be7","level_id":"59d745a448eb4f0d8431a0b7f05f01c8","mark":"0012","stair":true,"version":1}','added by keeper');
INSERT INTO "change_entry" VALUES(2,3,'leaf','9c12586156554b41a2c5747e892c0f93','babe6beef64141afb9a9ab338e772be7','insert',NULL,'{"id":"9c12586156554b41a2c5747e892c0f93","opening_id":"babe6beef64141afb9a9ab338e772be7","ordinal":0,"position":"active","version":1}','added by keeper');
INSERT INTO "change_entry" VALUES(2,4,'leaf','ae50fe78d9eb429dbbc5178c78f4b0fa','babe6beef64141afb9a9ab338e772be7','insert',NULL,'{"id":"ae50fe78d9eb429dbbc5178c78f4b0fa","opening_id":"babe6beef64141afb9a9ab338e772be7","ordinal":1,"position":"inactive","version":1}','added by keeper');
INSERT INTO "change_entry" VALUES(2,5,'lock_point','babe6beef64141afb9a9ab338e772be7','babe6beef64141afb9a9ab338e772be7','insert',NULL,'{"id":"babe6beef64141afb9a9ab338e772be7","opening_id":"babe6beef64141afb9a9ab338e772be7","version":1}',NULL);
INSERT INTO "change_entry" VALUES(3,0,'level','e1d481bb41b34922afdf70740f4a9800',NULL,'insert',NULL,'{"id":"e1d481bb41b34922afdf70740f4a9800","name":"roof","sort":1,"version":1}',NULL);
INSERT INTO "change_entry" VALUES(3,1,'opening','6946997d95a94997842a0d769c767f32','6946997d95a94997842a0d769c767f32','insert',NULL,'{"id":"6946997d95a94997842a0d769c767f32","level_id":"e1d481bb41b34922afdf70740f4a9800","mark":"9E4","version":1}','added by keeper');
INSERT INTO "change_entry" VALUES(3,2,'leaf','7d23012a0a0a45e09cf7bdb284f288c0','6946997d95a94997842a0d769c767f32','insert',NULL,'{"id":"7d23012a0a0a45e09cf7bdb284f288c0","opening_id":"6946997d95a94997842a0d769c767f32","ordinal":0,"position":"single","version":1}','added by keeper');
INSERT INTO "change_entry" VALUES(3,3,'lock_point','6946997d95a94997842a0d769c767f32','6946997d95a94997842a0d769c767f32','insert',NULL,'{"id":"6946997d95a94997842a0d769c767f32","opening_id":"6946997d95a94997842a0d769c767f32","version":1}',NULL);
INSERT INTO "change_entry" VALUES(4,0,'existing_item','70100838c8c44074ba7f609d8e7adbd4','babe6beef64141afb9a9ab338e772be7','insert',NULL,'{"backset_mm":69.85,"id":"70100838c8c44074ba7f609d8e7adbd4","kind":"lock","opening_id":"babe6beef64141afb9a9ab338e772be7","ordinal":0,"version":1}','added by keeper');
INSERT INTO "change_entry" VALUES(4,1,'lock_point','babe6beef64141afb9a9ab338e772be7','babe6beef64141afb9a9ab338e772be7','update','{"item_id":null}','{"item_id":"70100838c8c44074ba7f609d8e7adbd4"}',NULL);
INSERT INTO "change_entry" VALUES(5,0,'chosen_part','9e97e7ee97f64b76b1754cbfd419eb18','babe6beef64141afb9a9ab338e772be7','insert',NULL,'{"id":"9e97e7ee97f64b76b1754cbfd419eb18","lock_point_id":"babe6beef64141afb9a9ab338e772be7","opening_id":"babe6beef64141afb9a9ab338e772be7","part":"C-1","quantity":1.0,"role":"cylinder","version":1}',NULL);
INSERT INTO "change_entry" VALUES(6,0,'placed_unit','50bbb0ad73cd471cbe57695f9989b2d9','babe6beef64141afb9a9ab338e772be7','insert',NULL,'{"face":"inside","id":"50bbb0ad73cd471cbe57695f9989b2d9","leaf":"active","lock_point_id":"babe6beef64141afb9a9ab338e772be7","opening_id":"babe6beef64141afb9a9ab338e772be7","pattern":"above","version":1,"x_mm":20.0,"y_mm":1100.0}',NULL);
INSERT INTO "change_entry" VALUES(7,0,'own_field','d248267dba6d4177a21987674a4e4728',NULL,'insert',NULL,'{"choices":["AA","BB"],"entity":"existing_item","id":"d248267dba6d4177a21987674a4e4728","kind":"choice","label":"Key group","name":"key_group","unit":"","version":1}',NULL);
INSERT INTO "change_entry" VALUES(8,0,'existing_item','70100838c8c44074ba7f609d8e7adbd4','babe6beef64141afb9a9ab338e772be7','update','{"extra":{}}','{"extra":{"key_group":"AA"}}','edited by keeper');
INSERT INTO "change_entry" VALUES(9,0,'import_mapping','a4e90d394efc4ead9c8b0fe268b2a764',NULL,'insert',NULL,'{"fingerprint":"f","id":"a4e90d394efc4ead9c8b0fe268b2a764","mapping":{"Mark":"opening.mark"},"name":"Doors","version":1}',NULL);
INSERT INTO "change_entry" VALUES(10,0,'opening_fit','babe6beef64141afb9a9ab338e772be7','babe6beef64141afb9a9ab338e772be7','insert',NULL,'{"engine":"program","facts_read":"a5ca83876477bf081178c26357410b22","fit_key":"9f737a60efd3e7749fca3581fe60d2792f2094640b394a4735876f394448155a","id":"babe6beef64141afb9a9ab338e772be7","input_key":"case","opening_id":"babe6beef64141afb9a9ab338e772be7","version":1}',NULL);
INSERT INTO "change_entry" VALUES(11,0,'supply','5527214b24a043219566d85b08f669af',NULL,'insert',NULL,'{"id":"5527214b24a043219566d85b08f669af","name":"Closet","use":"laid","version":1,"x_m":2.5}',NULL);
INSERT INTO "change_entry" VALUES(11,1,'circuit','63c526baa5564461a07cb18c4e70c97c',NULL,'insert',NULL,'{"alarm":"drops","id":"63c526baa5564461a07cb18c4e70c97c","name":"A","supply_id":"5527214b24a043219566d85b08f669af","version":1}',NULL);
INSERT INTO "change_entry" VALUES(11,2,'run','32f996d378534906853aae47dd2150b8',NULL,'insert',NULL,'{"circuit_id":"63c526baa5564461a07cb18c4e70c97c","from_node":"supply","id":"32f996d378534906853aae47dd2150b8","to_node":"J1","version":1}',NULL);
INSERT INTO "change_entry" VALUES(11,3,'run','cdedda1b05264553a394105888a70953','babe6beef64141afb9a9ab338e772be7','insert',NULL,'{"circuit_id":"63c526baa5564461a07cb18c4e70c97c","from_node":"J1","gauge":"18 AWG","id":"cdedda1b05264553a394105888a70953","length_m":4.0,"opening_id":"babe6beef64141afb9a9ab338e772be7","stranding":"solid","to_node":"babe6beef64141afb9a9ab338e772be7","version":1}',NULL);
INSERT INTO "change_entry" VALUES(11,4,'route','84e25127066a495facb514cda68c63a8','babe6beef64141afb9a9ab338e772be7','insert',NULL,'{"id":"84e25127066a495facb514cda68c63a8","length_m":6.0,"opening_id":"babe6beef64141afb9a9ab338e772be7","pinned":true,"supply_id":"5527214b24a043219566d85b08f669af","version":1}',NULL);
INSERT INTO "change_entry" VALUES(12,0,'hardware_set','eae97ea7cf044d958cbd519a53a55f72',NULL,'insert',NULL,'{"id":"eae97ea7cf044d958cbd519a53a55f72","name":"HS-1","version":1}',NULL);
INSERT INTO "change_entry" VALUES(12,1,'set_line','a927e89edf854d59baef515ba520374b',NULL,'insert',NULL,'{"id":"a927e89edf854d59baef515ba520374b","part":"U-1","quantity":1.0,"role":"unit","set_id":"eae97ea7cf044d958cbd519a53a55f72","version":1}',NULL);
INSERT INTO "change_entry" VALUES(12,2,'opening','babe6beef64141afb9a9ab338e772be7','babe6beef64141afb9a9ab338e772be7','update','{"set_id":null}','{"set_id":"eae97ea7cf044d958cbd519a53a55f72"}',NULL);
INSERT INTO "change_entry" VALUES(12,3,'waiver','f1dcbda08b744b36b21812479550490b','babe6beef64141afb9a9ab338e772be7','insert',NULL,'{"about":"","facts":"f","given_on":"2026-01-02","id":"f1dcbda08b744b36b21812479550490b","opening_id":"babe6beef64141afb9a9ab338e772be7","person":"keeper","reason":"seen","rule":"hand-known","scope":"opening","version":1}',NULL);
INSERT INTO "change_entry" VALUES(12,4,'issued_packet','6b4152e0ca224602a23f56861f02e486','babe6beef64141afb9a9ab338e772be7','insert',NULL,'{"at":"2026-01-02","by":"keeper","id":"6b4152e0ca224602a23f56861f02e486","opening_id":"babe6beef64141afb9a9ab338e772be7","shown_key":"case","version":1}',NULL);
INSERT INTO "change_entry" VALUES(13,0,'assigned_part','bdab01481a2a4c12a6709c68d3b74c6d','babe6beef64141afb9a9ab338e772be7','insert',NULL,'{"id":"bdab01481a2a4c12a6709c68d3b74c6d","lock_point_id":"babe6beef64141afb9a9ab338e772be7","opening_id":"babe6beef64141afb9a9ab338e772be7","part":"C-1","piece":1,"quantity":1.0,"role":"cylinder","serial":"SN-1","source":"by-hand","state":"planned","version":1}',NULL);
INSERT INTO "change_entry" VALUES(14,0,'opening','1d711f3b145f4337a4299d8c37167466','1d711f3b145f4337a4299d8c37167466','insert',NULL,'{"id":"1d711f3b145f4337a4299d8c37167466","level_id":"e1d481bb41b34922afdf70740f4a9800","mark":"W7","version":1}','added by keeper');
INSERT INTO "change_entry" VALUES(14,1,'leaf','8b60d5c6bcf6462689d3c05c4a945a8b','1d711f3b145f4337a4299d8c37167466','insert',NULL,'{"id":"8b60d5c6bcf6462689d3c05c4a945a8b","opening_id":"1d711f3b145f4337a4299d8c37167466","ordinal":0,"position":"single","version":1}','added by keeper');
INSERT INTO "change_entry" VALUES(14,2,'lock_point','1d711f3b145f4337a4299d8c37167466','1d711f3b145f4337a4299d8c37167466','insert',NULL,'{"id":"1d711f3b145f4337a4299d8c37167466","opening_id":"1d711f3b145f4337a4299d8c37167466","version":1}',NULL);
INSERT INTO "change_entry" VALUES(15,0,'opening','1d711f3b145f4337a4299d8c37167466','1d711f3b145f4337a4299d8c37167466','update','{"retired":null}','{"retired":"walled up"}',NULL);
INSERT INTO "change_entry" VALUES(16,0,'delivery','7d5cdc698f2e4d6ea01a77d85aff78d0',NULL,'insert',NULL,'{"at":"2026-01-02","file":"doors.csv","id":"7d5cdc698f2e4d6ea01a77d85aff78d0","key":"f","number":1,"person":"keeper","told":{"new":2},"version":1}',NULL);
INSERT INTO "change_entry" VALUES(16,1,'open_question','e26e022369074f32bbe88f5a83f587e5','babe6beef64141afb9a9ab338e772be7','insert',NULL,'{"content":{"before":"LH"},"delivery_id":"7d5cdc698f2e4d6ea01a77d85aff78d0","fact":"hand","id":"e26e022369074f32bbe88f5a83f587e5","kind":"blank","mark":"0012","opening_id":"babe6beef64141afb9a9ab338e772be7","version":1}',NULL);
INSERT INTO "change_entry" VALUES(17,0,'transmittal','40a1130b02234660a2185ea643f89aec',NULL,'insert',NULL,'{"at":"2026-01-02","files":{"schedule.pdf":{"hash":"c7833160c63da29c02cf51b6bb898cf53137ae144cebfe2d8ecece1de0d67699","revision":"","size":14}},"id":"40a1130b02234660a2185ea643f89aec","number":1,"person":"keeper","purpose":"for approval","recipient":"Architect","version":1}',NULL);
INSERT INTO "change_entry" VALUES(18,0,'office','069367c78ce847b9a34430da94db7422',NULL,'insert',NULL,'{"id":"069367c78ce847b9a34430da94db7422","name":"office","text":"format = 1\npaper = \"a4\"\n","version":1}',NULL);
INSERT INTO "change_entry" VALUES(19,0,'building','34fb9ee21cbf4613ba728b46ced9f67c',NULL,'update','{"occupancy_group":null,"sprinkler":null}','{"occupancy_group":"B","sprinkler":false}','edited by keeper');
INSERT INTO "change_entry" VALUES(20,0,'level','59d745a448eb4f0d8431a0b7f05f01c8',NULL,'update','{"occupant_load":null}','{"occupant_load":40}','edited by keeper');
INSERT INTO "change_entry" VALUES(21,0,'opening','babe6beef64141afb9a9ab338e772be7','babe6beef64141afb9a9ab338e772be7','update','{"code_edition":null,"egress_toward":null}','{"code_edition":2021,"egress_toward":"key"}','edited by keeper');
INSERT INTO "change_entry" VALUES(22,0,'person','8fbbb3fe04b04db1bdad16f1432130be',NULL,'insert',NULL,'{"id":"8fbbb3fe04b04db1bdad16f1432130be","name":"keeper","role":"specifier","version":1}',NULL);
INSERT INTO "change_entry" VALUES(23,0,'attachment','494eb99347144395b651a2e5e1ac151e','babe6beef64141afb9a9ab338e772be7','insert',NULL,'{"blob":"508b7b1f113fdf173660d2b3dace45039a6d28f00ee27382c04c93af8213e4c9","entity":"opening","id":"494eb99347144395b651a2e5e1ac151e","name":"inside.txt","opening_id":"babe6beef64141afb9a9ab338e772be7","ordinal":0,"row_id":"babe6beef64141afb9a9ab338e772be7","title":"Inside","version":1}','file inside.txt');
INSERT INTO "change_entry" VALUES(24,0,'opening_fit','6946997d95a94997842a0d769c767f32','6946997d95a94997842a0d769c767f32','insert',NULL,'{"engine":"b4301d3ee4a51cecfdce6596e6990955","facts_read":"84d8a6f668ce7b7e99626905490ca049","fit_key":"4d1a5b681209a263fbb5d5c98b568915f236ffecd8d4f070f0326407c934a9cc","id":"6946997d95a94997842a0d769c767f32","input_key":"c3958cb63914e37cbb2515bb228775eff6bbdf3376a40d5a68374065f72a2b88","opening_id":"6946997d95a94997842a0d769c767f32","version":1}',NULL);
INSERT INTO "change_entry" VALUES(25,0,'revision','19b258e7732e41acbb299eb1f069cc5b',NULL,'insert',NULL,'{"at":"2026-11-30T17:20:54+00:00","id":"19b258e7732e41acbb299eb1f069cc5b","letter":"A","person":"keeper","purpose":"kept","root":"8bcbde68e6ec7336597151ebf2f135a3a6ff2f9b727794d854836b08926c2385","version":1}',NULL);
INSERT INTO "change_entry" VALUES(26,0,'opening','babe6beef64141afb9a9ab338e772be7','babe6beef64141afb9a9ab338e772be7','update','{"hand":null}','{"hand":"LHR"}','edited by keeper');
INSERT INTO "change_entry" VALUES(27,0,'opening','babe6beef64141afb9a9ab338e772be7','babe6beef64141afb9a9ab338e772be7','update','{"hand":"LHR"}','{"hand":"RH"}','edited by keeper');
INSERT INTO "change_entry" VALUES(28,0,'opening','babe6beef64141afb9a9ab338e772be7','babe6beef64141afb9a9ab338e772be7','update','{"hand":"RH"}','{"hand":"LHR"}',NULL);
INSERT INTO "change_entry" VALUES(29,0,'opening','6946997d95a94997842a0d769c767f32','6946997d95a94997842a0d769c767f32','update','{"hand":null}','{"hand":"LH"}','edited by keeper');
INSERT INTO "change_entry" VALUES(30,0,'opening','6946997d95a94997842a0d769c767f32','6946997d95a94997842a0d769c767f32','update','{"hand":"LH"}','{"hand":"RH"}','edited by keeper');
INSERT INTO "change_entry" VALUES(31,0,'opening','6946997d95a94997842a0d769c767f32','6946997d95a94997842a0d769c767f32','update','{"hand":"RH"}','{"hand":"LH"}',NULL);
INSERT INTO "change_entry" VALUES(31,1,'opening','6946997d95a94997842a0d769c767f32','6946997d95a94997842a0d769c767f32','update','{"hand":"LH"}','{"hand":null}',NULL);
CREATE TABLE change_reference (
	row_id TEXT NOT NULL, 
	change_set INTEGER NOT NULL, 
	CONSTRAINT pk_change_reference PRIMARY KEY (row_id, change_set), 
	CONSTRAINT fk_change_reference_change_set FOREIGN KEY(change_set) REFERENCES change_set (number)
);
INSERT INTO "change_reference" VALUES('43b5d2cd4d1a4a8fb364385ee80241bc',1);
INSERT INTO "change_reference" VALUES('34fb9ee21cbf4613ba728b46ced9f67c',2);
INSERT INTO "change_reference" VALUES('59d745a448eb4f0d8431a0b7f05f01c8',2);
INSERT INTO "change_reference" VALUES('e1d481bb41b34922afdf70740f4a9800',3);
INSERT INTO "change_reference" VALUES('70100838c8c44074ba7f609d8e7adbd4',4);
INSERT INTO "change_reference" VALUES('babe6beef64141afb9a9ab338e772be7',5);
INSERT INTO "change_reference" VALUES('babe6beef64141afb9a9ab338e772be7',6);
INSERT INTO "change_reference" VALUES('babe6beef64141afb9a9ab338e772be7',10);
INSERT INTO "change_reference" VALUES('5527214b24a043219566d85b08f669af',11);
INSERT INTO "change_reference" VALUES('63c526baa5564461a07cb18c4e70c97c',11);
INSERT INTO "change_reference" VALUES('eae97ea7cf044d958cbd519a53a55f72',12);
INSERT INTO "change_reference" VALUES('babe6beef64141afb9a9ab338e772be7',13);
INSERT INTO "change_reference" VALUES('e1d481bb41b34922afdf70740f4a9800',14);
INSERT INTO "change_reference" VALUES('7d5cdc698f2e4d6ea01a77d85aff78d0',16);
INSERT INTO "change_reference" VALUES('babe6beef64141afb9a9ab338e772be7',23);
INSERT INTO "change_reference" VALUES('6946997d95a94997842a0d769c767f32',24);
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
INSERT INTO "change_set" VALUES(1,'0db46103ac22422fb5cc548a0eb16a96',0,'2026-11-30T17:20:53.957+00:00','keeper','vm','4d97e4151c4d4b15b1bf02f6d46430a9','import-catalogue','Catalogue','edit',NULL,3,'61b4bbc4444ed8333ba609297324702279f5bdc65f697dd56075d07c10d10820','8ec565edec4f71735647bbf3d5dcc0bf1e65600508208b496a77cd6c690931a1');
INSERT INTO "change_set" VALUES(2,'209141c5bb854384946efd33909030cb',1,'2026-11-30T17:20:53.991+00:00','keeper','vm','4d97e4151c4d4b15b1bf02f6d46430a9','add-opening','Add opening 0012','edit',NULL,6,'11656dff4a1e861d856911998df86262edf831d31de4e80775ef2542e55174d7','e804a068af5b4ef913dc5264271779064e7529c5b3aa4c08345a1641850ae60d');
INSERT INTO "change_set" VALUES(3,'329e29fe5b4649eb91d622e794715b9a',2,'2026-11-30T17:20:54.034+00:00','keeper','vm','4d97e4151c4d4b15b1bf02f6d46430a9','add-opening','Add opening 9E4','edit',NULL,4,'e3eb15705dd0d3d70a0bf1211e5865d8435f43b5e0c04786104c606d8a807454','5e925f81ae8cdde1f253183fa87d8c13ac136910bd2d09cc2cd308d3650c8f57');
INSERT INTO "change_set" VALUES(4,'e73f8eb4d34f4f7ab89476b905424c3a',3,'2026-11-30T17:20:54.054+00:00','keeper','vm','4d97e4151c4d4b15b1bf02f6d46430a9','add-item','Add existing item lock to 0012','edit',NULL,2,'eb27d28774e10014ef9728d00aadc96275b961b31dc5577b5e347e6ac66ae0e6','fc9f54d16803182f408869ffe2c73a36d0d63e561dd31abfc75ea65e39444391');
INSERT INTO "change_set" VALUES(5,'91e166d35259429e83cde12ae2f1f3f4',4,'2026-11-30T17:20:54.096+00:00','keeper','vm','4d97e4151c4d4b15b1bf02f6d46430a9','choose-part','Choose C-1 as cylinder of 0012','edit',NULL,1,'4f494cbdeca2d4b979e119df5c85da5566fdab455a5a7271f5436c9bc4078c9e','779fd5d69d0ba27fd9c697df2e9b9861afc4ad957eed072e22266d049d40fed8');
INSERT INTO "change_set" VALUES(6,'32459683ef794de29ae4642313036282',5,'2026-11-30T17:20:54.123+00:00','keeper','vm','4d97e4151c4d4b15b1bf02f6d46430a9','place-unit','Place the unit of 0012','edit',NULL,1,'208af1feb4afb2f3d9a99b010a6e9e6397e1284a5f58ef509c5eb31c2953b8f6','eb5c9f416e2e9b02e03cecd84d6a7fb8c070efd6bbd5820a76c7bed972c71e46');
INSERT INTO "change_set" VALUES(7,'9c143d0fc222453386b4f0f9ea1c4956',6,'2026-11-30T17:20:54.133+00:00','keeper','vm','4d97e4151c4d4b15b1bf02f6d46430a9','define-field','Define field Key group','edit',NULL,1,'516bc91d4f391f677ba088a2d9928975eb6376f09fcda9d2c633468db00ed3e3','04ac04a93b937695fa76f33e3a8c3b4ce4b8b698fee8d19fa03d134cdd63fe4a');
INSERT INTO "change_set" VALUES(8,'b2383cfd98414e46adf3325008e0cbc7',7,'2026-11-30T17:20:54.151+00:00','keeper','vm','4d97e4151c4d4b15b1bf02f6d46430a9','set-own-value','Set Key group','edit',NULL,1,'01704557fc421e0d6ea76776ffee6c60565487375b3c677cb98ebd6ba109ef0a','05e5967aad79756208cf90d65cc56aed47f92485b413bb22e74c0d1b4193b48a');
INSERT INTO "change_set" VALUES(9,'df4de00c6b5a49479eed518cfc032e5d',8,'2026-11-30T17:20:54.169+00:00','keeper','vm','4d97e4151c4d4b15b1bf02f6d46430a9','import-survey','Mapping','edit',NULL,1,'a04c042f2b69a17090af378711744ae5ab75bb7d64273aefec3baee23908e13d','fcc0f3943d7fa3905df9e93004fb627f8a5dc15a719a136469642fbf0b3cd9f6');
INSERT INTO "change_set" VALUES(10,'fe33c6c8f5ba41a497dd006e7bdbbb7d',9,'2026-11-30T17:20:54.191+00:00','keeper','vm','4d97e4151c4d4b15b1bf02f6d46430a9','fit','Fit','edit',NULL,1,'1b2588c0eaddb98f6ffb4b7dfee8844bd5248a8988894f7af7d16b691f6b734e','c1f066f0509572300dcd09b7af3fc5a504943e13e9afec35bd6c90e7a3efd729');
INSERT INTO "change_set" VALUES(11,'c90c5923668e4eaea661b57466f4a01d',10,'2026-11-30T17:20:54.202+00:00','keeper','vm','4d97e4151c4d4b15b1bf02f6d46430a9','lay-supply','Power','edit',NULL,5,'a21157dad1216f234b74e53ab28fc3e9eb2d9cd14d1caf25196241b5ddf1a803','9eb1281c111e6dd4966d3d7b10e4daeb91a1c24138dc637eb387ba129bd0edcc');
INSERT INTO "change_set" VALUES(12,'b1e29aa2dce14213a84151ec9ca8e7b2',11,'2026-11-30T17:20:54.214+00:00','keeper','vm','4d97e4151c4d4b15b1bf02f6d46430a9','make-set','Sets, waivers, packets','edit',NULL,5,'3e4279ff3ed849f2bbc1353574c6cf1354b5807ad8ffbc6bedfa8495b331e2a1','bc44235dfadc903fef9438dd747e46903ec5dd3ce08deac91013d6c95ef049d0');
INSERT INTO "change_set" VALUES(13,'b88b90b215714ff4b7a8369fc472625f',12,'2026-11-30T17:20:54.249+00:00','keeper','vm','4d97e4151c4d4b15b1bf02f6d46430a9','record-piece','Pieces','edit',NULL,1,'084ba88ab585b5293ed7957608cd03253a3efab57bbdef05cb3db796733a396a','a2c2f8ff9ee0530b6ca3363f613a1e7701b09e002cb157b40dac84f7d853f8ab');
INSERT INTO "change_set" VALUES(14,'cfbacd5f3330470a982e75c9276cb5f9',13,'2026-11-30T17:20:54.253+00:00','keeper','vm','4d97e4151c4d4b15b1bf02f6d46430a9','add-opening','Add opening W7','edit',NULL,3,'f2bb55331a7a28641d9e16e4721277696d8536640dbd2f1f877f90ec973c736d','f5a47a46589d9a2c700796db5d9d12a34b887b64cf6ab85bec2e2460bb4af70e');
INSERT INTO "change_set" VALUES(15,'25b48f6a45dc47eda73622a73fd11438',14,'2026-11-30T17:20:54.263+00:00','keeper','vm','4d97e4151c4d4b15b1bf02f6d46430a9','retire','Retire opening W7','edit',NULL,1,'4c426a34ff28bc5cf9622a11a15fb5df342e74f45b16ed5cd70552167441897c','cc824698ad15cc0c88205cf2c1abecb4b482015ad11cfd48d752dca024eab0c2');
INSERT INTO "change_set" VALUES(16,'36d13cc969b9438e92a62d6d66d9da8a',15,'2026-11-30T17:20:54.272+00:00','keeper','vm','4d97e4151c4d4b15b1bf02f6d46430a9','import-survey','Delivery','edit',NULL,2,'6bd9f6168f99be836a7e2b0a1a5f63a46c0c51369f4f7656cbdc6eca544f98c9','210363a88d08a1e939ae67284ac70f801a2abccb3121f2f33a21a63f47fd103a');
INSERT INTO "change_set" VALUES(17,'62d3d6d667904e82a337454dc2f35f05',16,'2026-11-30T17:20:54.291+00:00','keeper','vm','4d97e4151c4d4b15b1bf02f6d46430a9','transmit','Transmittal','edit',NULL,1,'e751cce401dbdcae4c1a43cc1ce11d87a79ff137547b7b931b3cc4573c416242','57be96cb19880480f1dfd7e1f0181878be868348dc88268925a5d2cd0389c9b8');
INSERT INTO "change_set" VALUES(18,'a493437361e54329ad0cb9a96ec51941',17,'2026-11-30T17:20:54.295+00:00','keeper','vm','4d97e4151c4d4b15b1bf02f6d46430a9','set-office','Office','edit',NULL,1,'7938b6dfdae9d6ca1a4916c553dce3a3f094c1b4fa50eb7392cca79961566218','1579a5f8a0fecac6cc827034c20749f9073e776cd4406971ae5b0c79704bc396');
INSERT INTO "change_set" VALUES(19,'ea076843ba074dd7a5370d8536869202',18,'2026-11-30T17:20:54.311+00:00','keeper','vm','4d97e4151c4d4b15b1bf02f6d46430a9','edit-facts','Edit occupancy group, sprinklered throughout of Mill','edit',NULL,1,'555df4034cca42ded83446d9a09207b3aa08dd40ee9d6afb083a3f55a930f531','a67c19802e2f39d0963b2e993e094bfdd81eefa9e1dcc06ba9af9bf377923111');
INSERT INTO "change_set" VALUES(20,'e68e390c17634108a5a0add494a9590e',19,'2026-11-30T17:20:54.326+00:00','keeper','vm','4d97e4151c4d4b15b1bf02f6d46430a9','edit-facts','Edit occupant load of 1','edit',NULL,1,'5bca0523b9938dc30c56cbb9ada827202e4bbb95a4715de1d672addaf79be789','3e1e881d5ee1eda9b0f76d504fd0f0d000c60626b2a8ff151648e0bbbeff353e');
INSERT INTO "change_set" VALUES(21,'57d08e38210d43c6b3aff6e7f814aca8',20,'2026-11-30T17:20:54.337+00:00','keeper','vm','4d97e4151c4d4b15b1bf02f6d46430a9','edit-facts','Edit direction of egress, edition of the code of 0012','edit',NULL,1,'8098aee95c3aa1d54f246d23a96d1cc09c2b96850b6126ecc9c8a3da5a4bcec8','374f69bc54cd5d04875d0aa337642cbdeed9be249a343dda2434c46a9fc96ec8');
INSERT INTO "change_set" VALUES(22,'45bc5fe7d1f449abbb4792599e853121',21,'2026-11-30T17:20:54.345+00:00','keeper','vm','4d97e4151c4d4b15b1bf02f6d46430a9','add-person','List keeper as specifier','edit',NULL,1,'9870b9bb3a9171efc0b3e3e6f342f5d1ceb605c021c8c96a3008505df08a6757','75c77e1e7e44d451cb5d877699ed4a22012a68a421121f39fe1074b2856d03bc');
INSERT INTO "change_set" VALUES(23,'ecc25a15c42640b8aeb9b52a398ae693',22,'2026-11-30T17:20:54.367+00:00','keeper','vm','4d97e4151c4d4b15b1bf02f6d46430a9','attach','Attach inside.txt to 0012','edit',NULL,1,'4432683aa2bdbe909384f79dde9c3f3aa07fc80113fea6a2c3ca2431c43daf2d','d7aebfcb3b758f3ce3ecc3c2e7dbd15b56615b964619b68b3870549bb04a5836');
INSERT INTO "change_set" VALUES(24,'016fd89f61234a72abb7b98c5a36be12',23,'2026-11-30T17:20:54.436+00:00','keeper','vm','4d97e4151c4d4b15b1bf02f6d46430a9','fit','Fit 1 openings','edit',NULL,1,'76a05439c0838d54e5c55999a46d9f0f6eff4d15b42571f6cd9530a4a08a9321','5f9bc5aae3a9ef39f8b9ccca821258e77615a035aa0269d2e5195e353882f942');
INSERT INTO "change_set" VALUES(25,'76a23cddde4240cbb19c4aeb048231e5',24,'2026-11-30T17:20:54.788+00:00','keeper','vm','4d97e4151c4d4b15b1bf02f6d46430a9','freeze','Freeze revision A: 2 openings of the whole project','edit',NULL,1,'f37047733ba2b1a687a06cc8e9075319dc9cd034e80161326cb15765a9a65b27','a5ab970d95dd8c4acc074cd762dce42c5680470fca75f34c3c1fdcb182370c8e');
INSERT INTO "change_set" VALUES(26,'6502787787bc402a94070de3b8c7ec06',25,'2026-11-30T17:20:54.806+00:00','keeper','vm','4d97e4151c4d4b15b1bf02f6d46430a9','edit-facts','Edit hand of 0012','edit',NULL,1,'a0b1155f401fc61269a478c306f1e66c5a222827cbaf13009e5db362e33d7395','4a660dcecab5ecc611ac0ddedbec0b38dc23b99baf2e3d2922d85daafc9a6cfa');
INSERT INTO "change_set" VALUES(27,'3c0acb0228f64cc8be2a0c60e55bf74f',26,'2026-11-30T17:20:54.813+00:00','keeper','vm','4d97e4151c4d4b15b1bf02f6d46430a9','edit-facts','Edit hand of 0012','edit',NULL,1,'1eb258cb805816b35d81ea717e720e5a435df691add9695f854ab8be6a999ee6','6fbcb8b50bb7675e418589c134bbd03d2a0138f26f39cc91e3c945409d173030');
INSERT INTO "change_set" VALUES(28,'fab692cbd8b744d0b14fe46a86b567f1',27,'2026-11-30T17:20:54.859+00:00','keeper','vm','4d97e4151c4d4b15b1bf02f6d46430a9','undo','Take back step 27: Edit hand of 0012','undo',27,1,'4dfe552131e0401601e4d7802eaf84f108352e491ea2f555fdcf047225c42f9f','3ba15aad7a2138816dc64cc48cf8b5ad042648fdeb79781cae13b18dda8f798d');
INSERT INTO "change_set" VALUES(29,'198bd5339fdc4915915a972ab040171c',28,'2026-11-30T17:20:54.874+00:00','keeper','vm','4d97e4151c4d4b15b1bf02f6d46430a9','edit-facts','Edit hand of 9E4','edit',NULL,1,'6fd2f0030f5b478aa285d45dab6e1e08e2c2c11c3c86b53383f4266d6c35682a','f949caa054e3c5f0bbd62b67b1937989a52693158d0fd7d1d569bb92a83e0eae');
INSERT INTO "change_set" VALUES(30,'22c857df891549538b32911c9a02a2c5',29,'2026-11-30T17:20:54.877+00:00','keeper','vm','4d97e4151c4d4b15b1bf02f6d46430a9','edit-facts','Edit hand of 9E4','edit',NULL,1,'7f0e4e3a4a963ecdf125edac9c63caf356f2c82567c3e68910fa65ad335d1750','f1d64be9f0fda582eae51c9eafc085964a9d77740075f5570f745a12c066eb59');
INSERT INTO "change_set" VALUES(31,'315a676aae0642618a0c8eea3d2e7519',30,'2026-11-30T17:20:54.920+00:00','keeper','vm','4d97e4151c4d4b15b1bf02f6d46430a9','undo','Take back steps 29, 30: Edit hand of 9E4','undo',29,2,'465c65d4713323cba5b25705206ac96eab6fc69db0b0aade1e63d0145a11f9cb','c9ec8c8449830da46bf7b75ba9c7bc72046da23204c73732194b3ceaf8cb467f');
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
INSERT INTO "chosen_part" VALUES('9e97e7ee97f64b76b1754cbfd419eb18',1,'babe6beef64141afb9a9ab338e772be7','babe6beef64141afb9a9ab338e772be7','cylinder','C-1',1.0);
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
INSERT INTO "circuit" VALUES('63c526baa5564461a07cb18c4e70c97c',1,'5527214b24a043219566d85b08f669af','A',NULL,NULL,NULL,NULL,NULL,'drops',NULL);
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
INSERT INTO "delivery" VALUES('7d5cdc698f2e4d6ea01a77d85aff78d0',1,1,'doors.csv','f','2026-01-02','keeper','{"new":2}');
CREATE TABLE engine (
	"key" TEXT NOT NULL, 
	program TEXT NOT NULL, 
	parts TEXT NOT NULL, 
	CONSTRAINT pk_engine PRIMARY KEY ("key")
);
INSERT INTO "engine" VALUES('program','0.1.0','{"fitting":"code"}');
INSERT INTO "engine" VALUES('b4301d3ee4a51cecfdce6596e6990955','0.1.0','{"attributes":"3e6c7dff115ef3976a70cc8400c5ed63","calc":"cfc65a333bba0ab6e7ed34613aa6298f","catalogue":"7df10039fb3071ba446a3c75e95bc324","family":"f1370ffd80a399f8096e52df29b5d53c","fingerprint":"ec19441270b1cf62c9ac718a54c03509","fitting":"ff78fb6ff9d029872dfb0b391baefb31","hwsched":"c4a96cdca046aeaecf37a157d67b6c01","keys":"0df2b9713277250cfe0dbefcea5a537f","language":"2e42d7b146fe8984c9f01b0d3a99b54a","outside":"acb860361b5b7f575d1c3e0dbde52f19","paths":"60e302995b63b5195fa21074b2edd36a","quantities":"38279f7568b7526f7e355b0787b2c9a6","rules":"cb6b0ebf97b4dd98c6fa0101c5b7b859","survey":"fdb1da56d6d964977508dfb45483135e","tables":"d26fe3d9b88aef56eac118153f070af3","telling":"f0f98d625b09e4ffa1597b5029001bca","values":"015d24f15a901adc7774dc1ba58703c8"}');
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
INSERT INTO "existing_item" VALUES('70100838c8c44074ba7f609d8e7adbd4',2,'babe6beef64141afb9a9ab338e772be7',0,'lock',NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,69.85,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,'{"key_group":"AA"}');
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
INSERT INTO "frozen" VALUES('ce151f2eee6e2ca36e2f324b608b96a2e7821a840d84fee31faab99e60316a7c','engine',X'7B2266696E6765727072696E74223A223766353438316231333734393039303666366635616330643361373762303938222C2270726F6772616D223A226877736368656420302E312E30227D');
INSERT INTO "frozen" VALUES('d01372fcd5f4a830e4bb59fc75d1e27a66be344e42c979825f007e2228ce8bb9','fit',X'7B22737461747573223A22746F2D6D656173757265222C227061727473223A5B5D2C22737461636B223A6E756C6C2C22706C6163656D656E74223A6E756C6C2C226361626C65223A6E756C6C2C22686F6C6573223A5B5D2C22706F776572223A226E6F6E65222C2262617474657279223A6E756C6C2C2272656675736564223A5B5D2C226E65656473223A5B7B2266616374223A226578697374696E675F6974656D2E6C6F636B5F666F726D222C226C6162656C223A226578697374696E67206974656D3A204C6F636B20666F726D222C22626C6F636B73223A227468652063686F696365206F662063796C696E646572206F72206C6F636B227D5D2C22636F7374223A2230222C2263757272656E6379223A22222C22636F73745F6E65656473223A5B5D2C226E6561726573745F6D697373223A6E756C6C2C2272756E6E6572735F7570223A5B5D7D');
INSERT INTO "frozen" VALUES('e0f3e5258dd93fb5be5584a3ee4c19e48a8ffddeff536259ffbe80fd6843f2a1','findings',X'7801C5574D6FDB3810FD2B844E09201B71804517CA294D1B6C81457781764F451150D4C8624D910229C5F116FDEFFB86FA88DC38499BA6DD8B618D287266DE9B37C30F9F13DF194AB26463DDD62E722A9DA745E1B531499A143A28DD186D7945E8FC35ED600D744D5EB73BD8B6D25B6DD730D614825CF3BA7F6CDC2B1396A808C2902C33F1277EC556176D7536B754A4D755BB676A2BAD3616BBED596BD9E24C69CE846B888FCCC4A5F624BC6CF1B08403B90C3AE078E5EADA59D178A95AAD28136D45F148216D21B6956C4568F13708ACD2AD2848E982F082B01DAFED2CAC6B47019BAACE734817AE6E0CB5FDFB3E0FD93C8C9F1AD8B5341D9CC93E7F491399BBAE8543234031C549F621E12C2FA31B57750DC7E3739FDD9961CAEDCC3666161F0DA95DF6494D3EA6C0575F539164A53481C6C7AB9CA1C7FAC669CBDE245FD2C33CD221748485CFC1A309F773A5C00E9D1BA08F6CD08C12AFD71EAF603673EBBB566A2F0AE7FC6CE91FA0C083B451B26BB5B34194CE18B715A577B5A07840CA0CD23E159EA4AA22AF2A6C87401FE2CB4F0AE0103DC6BC4FF418919553EE6670F741CD0C31BAD9730CEEC7D9E07C411EDB3E2B1BFEEAE50028F97A06EFEB9BC6A150E73498E9C59EB44C45B1671DCBE24CD08D0E2C32100BAAA1644E6DE2690FB2878564FAD0F027AC3E93140DA2C3CF8DF4ED63523351E7FF8DF610D54650EF508D01997188064066A6416606B19A6038AC4D6332AF18852567F42A9EF0245A96BA5DA04F444DFF9A9085535D4D3662F248A77B0FF8B095D0014D63AFE98DDE3EC4994F2E47F309CAEB868506FDD22107CCB320D650FC40452AB8D5EEA0336517A41141EE02B60CC276751E6BE97EC1898463EFE45A6ACB643D041FCC1372A3D3CF92E25E69168D335AF1D0B057F4DCA3A151881AF1E2E523797EEB7257EC44250332A0B9893B51CB5D1C0504F7ED14A3455BC1AE21C7CA5301FC302CA443CB27D499E754025521D1E637D4B40F96EF8690685ED978B7F6B2AEA9887B0D7BF0F722DFF5D304173166279CC00EF6953DEB05E76113EBBE5FE2AC02679C8FA6BCD3A64006063F315391A880BEB4618BED624C00B0B3D04D713185C50BE04E57E818C423B03EA940620758601244CAFC1DF8A68631C30DE4E54E7FEF183849D86D379E23F0E6E585589DAC4E96A7CB17E2E8F4E474757C26DE5EFE7DCED654BC807DB5FC6DF9BB38A21B85EC7367CE90C8CEA3176364055C486A49C81BBA3319522D201B0338669B72B6902826E51AFDE87077C85DF19EC1617C4463A465EE72CD827DF8855139CC9118A7611FA64E9993896031474CDF46421AB197856BD845FE68B0746DE578AE068FAE79EF4F9DD7A1D0186331A932E42825B2908569B81DD8765F718F7D7CAAF021AA65FFE249CCA84832651725C66B6E5B7B757D8F767E333778289B35F1BD8E3D2172897A24D4FF7821F8DE0BC6F8E59C7E4354228FADDA9540B392BEC0F58644501515B8246530594872D0FF02B17117C06922CC47EF5EBD11ABD56AF1EA2BB2ED8E91A6FB753ABBBDD1FCF2F00F49C7900AF87C8736710EBC734DB835948CCCD59819ECF06DB792E983EF20E4C7FF006EF41712');
INSERT INTO "frozen" VALUES('4716d7fb2d041202878fcae7ab76610b21e954b8b7caa5e30c7b5b64aa1ff764','opening',X'7B226F70656E696E67223A7B226964223A223639343639393764393561393439393738343261306437363963373637663332222C226D61726B223A22394534222C226C6576656C223A22726F6F66227D2C226C6561766573223A5B7B226964223A223764323330313261306130613435653039636637626462323834663238386330222C22706F736974696F6E223A2273696E676C65227D5D2C226974656D73223A5B5D2C22706F696E7473223A5B7B22706F696E74223A7B226964223A223639343639393764393561393439393738343261306437363963373637663332222C226974656D5F6964223A6E756C6C2C226E756D626572223A312C226E616D65223A22222C226F7468657273223A5B5D7D2C22666974223A2264303133373266636435663461383330653462623539666337356431653237613636626533343465343263393739383235663030376532323238636538626239227D5D2C2266696E64696E6773223A2265306633653532353864643933666235626535353834613365653463313965343861386666646465666635333632353966666265383066643638343366326131227D');
INSERT INTO "frozen" VALUES('9adfe8fcb802ccde7797b38b9e746fc3f1c567907fdbe47325d7e62910d4a3b8','findings',X'7801CD584D6FDB3810FD2B039FB6806D2439EC413E15418B6D506C8BDDECA9280C5A1A5B8429522025AB46D1FFBE6FA80FCBA9ED4DD314D983136BC48FE17B6F8633FEF475E26BC39364B2D6D5CCD5F8AC6799AA78329D643AA4BA34DACAEBCCA575C1B60A781178C75E577B981BE5ADB61B180B0E416D64E89F8EB018A5AEC6F084F0B551811AE7B79C11B6A0D59E942556DE68F684B5827696DC9AAA9CA9F46EE35531C5900C061DC859A642ED29E0E330C4373AF01C5BAE54D0011BA6AE28B040E9555AE9545C4F6B2F9EFCCD4C4DAE2ACAF47A8D6DBA45D596E155427913D25C7C2A590E11BDFEF8D787BB37B7F7349B056D539ED525BCC978418DAE72583D1B56019394090E8BB3675254AA74CB38270092138A733B656A86775FBF4D276A0523FC81D93267B07EFA3C05767AC7D924596329EE1F972B8115034BA76D9CF36D3A70D46EF34C34DD0BD8ADDF80FEE6EAE6F7D9D5F5ECEA867EDB3297EC5F91606F325054E5E04BC8590361501A5CC1A00690E56036C5DB0D1089803D8A977721D4DCB2DD3AA0364ADB113BB217B68ED4AF3084D6DE157142D055E4FE57C0BBB5AEB1B315AF9DE759E6B531E0E1280A42ED77BC87F53F42E01F1BD74A28D24D90CC3AA1F7F80B196555BE185B72D69BBC3A3201DB746B115047D60261E9B5328B5EB009BDD5909F5715A858107FD141BE41DB5C2474BB47E80A7B50DF0ED419E7FC05769208AF781A232F864DA81084128012C419A73A937812C90B41B58575E320F221E06E5D511AAEDAF72D58C9F8AC2F7FFA53BAE9A9EE63732228CCA3AFCBA2C0E9E273CBD3C830B034B2F51C61529755E62D3D30F4FC2C859F79DAD1B33CACFBA49C70245A2D8185AD9E43B49DFF09BD4E534851AF0CA4863C865C38BC7AB3F17805B3195BFF806A2E2A2D557585941F68ED8C714D1BDD1CD79A1244A7FD943CAB348F52447AC970A62EA79F94D8E0D0937D3DA58B1ECD41173DA56A4064C473EBFFC810FDFE794E9D47103F37A71FFA2BCFF962CCE797D2216CC7641EA51809842E910DEA3F93A37AB577D9E8BD932C8EDD2E0A43D2CA30D1C894B60AE09844FA1424A34AE5632DF22855BCEC694F49AB27F53B690944230D7147C8C834E4939895061A4E27A11ECC36E708A2CBB8C39364996A9FD6281363CA79A8C8D23551A68FBE191DC52914EAB2347B2936D2DC05B6A212BA35F81AEBA833455E82AA6BE74C85921397114A3CA931ADC3FF439D8925C5828A52EAACEF3208EA98B875421FC5F7EE49F4798AB1D623BC1C286B67CF45899397C75382C2B0DDA04AED2A695F034BA99B3A842B4777D78273DD56271723F119D0C5FE922BC4A569ACE41AB53F87EEDDF51859CC9CB7675916FF0368632D7475757D4399574D184118BB1BA9816DDBF34425B68DCFAF4677B8F2D06B9D43758C697F7761F8CF413A84D35191F1A3E18F32128AF524ADE49E8C5319DA2F2936751586C046E1D9E51C7A2DAA7E4456885C1D342E5C794EB7E821D1B2557D8D1BAA78B17486C2E1B9A54E55CAB80D9A13B977DA02169D1E6A1434809265B09C46AB2A57B22CB7423F2AB6019307D7D1E914B3A053A131BA862F503AE031E6769C89A668E847D173A8439F4C7CEC53FDACB692F962223D62FECC2F03C8BC52893EF859C066D2A0C4141AB968D7166EA55A6A6F1660BFA7023DD842DA0EC9EB1B34CA567E36683B5369480EFD2A3066B617C20D5E74B4DC4BE72F89B2DB565ACB73B173F06784F40FA4F9CFFF02BE60FB52');
INSERT INTO "frozen" VALUES('6a99afe727e77ff94a119346ef127efaee16e0e7753319cdf89d731ffa2e6fc0','opening',X'7B226F70656E696E67223A7B226964223A226261626536626565663634313431616662396139616233333865373732626537222C226D61726B223A2230303132222C226275696C64696E67223A224D696C6C222C226C6576656C223A2231222C227374616972223A747275652C226567726573735F746F77617264223A226B6579222C22636F64655F65646974696F6E223A323032312C226F63637570616E63795F67726F7570223A2242222C226F63637570616E745F6C6F6164223A34302C22737072696E6B6C6572223A66616C73657D2C226C6561766573223A5B7B226964223A223963313235383631353635353462343161326335373437653839326330663933222C22706F736974696F6E223A22616374697665227D2C7B226964223A226165353066653738643965623432396462626335313738633738663462306661222C22706F736974696F6E223A22696E616374697665227D5D2C226974656D73223A5B7B226964223A223730313030383338633863343430373462613766363039643865376164626434222C226B696E64223A226C6F636B222C226261636B7365745F6D6D223A36392E38357D5D2C22706F696E7473223A5B7B2263686F73656E223A5B7B22726F6C65223A2263796C696E646572222C2270617274223A22432D31222C227175616E74697479223A312E302C22736F75726365223A2262792D68616E64227D2C7B22726F6C65223A22756E6974222C2270617274223A22552D31222C227175616E74697479223A312E302C22736F75726365223A22736574227D5D2C22706C61636564223A7B226C656166223A22616374697665222C2266616365223A22696E73696465222C227061747465726E223A2261626F7665222C22785F6D6D223A32302E302C22795F6D6D223A313130302E307D2C22737570706C795F6C696E6B223A7B2270617274223A6E756C6C7D2C22706F696E74223A7B226964223A226261626536626565663634313431616662396139616233333865373732626537222C226974656D5F6964223A223730313030383338633863343430373462613766363039643865376164626434222C226E756D626572223A312C226E616D65223A22222C226F7468657273223A5B5D7D7D5D2C2266696E64696E6773223A2239616466653866636238303263636465373739376233386239653734366663336631633536373930376664626534373332356437653632393130643461336238222C227365745F6E616D65223A2248532D31222C226F776E223A5B7B22656E74697479223A226578697374696E675F6974656D222C22726F775F6964223A223730313030383338633863343430373462613766363039643865376164626434222C226E616D65223A226B65795F67726F7570222C2276616C7565223A224141227D5D2C2266696C6573223A5B7B22656E74697479223A226F70656E696E67222C22726F775F6964223A226261626536626565663634313431616662396139616233333865373732626537222C226E616D65223A22696E736964652E747874222C2268617368223A2235303862376231663131336664663137333636306432623364616365343530333961366432386630306565323733383263303463393361663832313365346339222C226D656469615F74797065223A22746578742F706C61696E222C2273697A65223A31362C227469746C65223A22496E73696465222C226E6F7465223A22222C2261626F7574223A22227D5D2C22706965636573223A5B7B22706F696E745F6964223A226261626536626565663634313431616662396139616233333865373732626537222C22726F6C65223A2263796C696E646572222C2270617274223A22432D31222C226E756D626572223A312C22646F6E65223A5B5D2C2273657269616C223A22534E2D31222C226C6F74223A22227D5D2C2261736B6564223A5B5B312C22626C616E6B225D5D7D');
INSERT INTO "frozen" VALUES('1be3ea10e50c99d718da2d2c1d2b09cc21e457054a66bb3596f1d4bc490fc181','chunk',X'7B223639343639393764393561393439393738343261306437363963373637663332223A5B22394534222C2234373136643766623264303431323032383738666361653761623736363130623231653935346238623763616135653330633762356236346161316666373634225D2C226261626536626565663634313431616662396139616233333865373732626537223A5B2230303132222C2236613939616665373237653737666639346131313933343665663132376566616565313665306537373533333139636466383964373331666661326536666330225D7D');
INSERT INTO "frozen" VALUES('2ead3eda14246e981fbd05b665880e8c4d6d172b536f12f6f18200e88b97b1bd','supply',X'7801ED585D6FDB3614FD2B849E364035FC6DC7792A8A6140571403B6610F456150121D71A1488DA4EC1A41FEFBCE25F5E1244D9C7668B00D03FC20CAFCB8BCF7DC73CFD54D62856B944F3637896BEA5A1DE94916C926592CA6ABE9649E4DE77C3C9F4D27178BE5B2582FB2F17AB75C5EF05D92269A570233DF28E384C7386BA42AA4BE4A36BA512A4D94D80B7567B0ADBA61AD788EC571E2277A3F1D2DD2E438CCB0D2896154730B2BE3F4C6D1B18AC34E1CCABD171676C7FFE2500AD7BD709EEB223B6E4BD3D8FEA517552D2CF78D15DBBC9BA98D1F96E53C931AB70ADBDEA6492E6DDE488F1D3EDC7483DE57CB59BE982E33CE178BE57CBE9CF0F12ACF26EB7C2E56E3FC6295C3CCE8DDED17BAF635561EA4ED1DF559BBB9DF1A3D3853C94AC2235BDEDD8B2B6EE1DFA4B0A676D8F0CE3DDBD9FD3DFF47C153287000512EB67B441E9828C45EE604990F1FC9AB45F7681BDDBECC1B6B85F6140B5A901BA578ED04F28B86266030240CED509A903D43E0A4B68D2B87F1B53607BDBDFFF641BC6B6B3225AA08D56BA9299B1B1D1623FA95708E5F5102F9523025F4952F99D9311AC170B6B3A6621105CC1BF676C2A463C3722D44413B27983B8AAB91A4B01E97D1B84A4438CEE19969903EC9DB49729BDE244FD87128B967E3F164CA0ACB0FEEE4BC0D939E95DC316DD80E8F9E66E6A6D1C84378BC33A53D7A84290F2CC97826969910BBE57C329FF05D76C12F78369BADC56A35CDC4EAC4D2E416D740C4C4D6EC7682C8A20D12DD2BDCF9EC66D8A0E2F63A4CA61B9139317F93C99ABDFEFD47E68C0AB48520991DCDBBB9EBB9B347804A88D1026A28955F61A73D108593A573114C2DDB8C0269A67743D547AA73D7A104796227569B83B05DE811F4BC04AF0310C6B296E2C941F7D80650370AE76F5BD0DFD069110479218A824FB231B871BE58CCF8EC623E192FD6EB355F8D2F1633984C60DBB665044049136FBA61705F3703B915A11467C4E1335CD50374331F8DD3E48A3701F9311638CE79DBFBB28F0CB75C292A5C9334896527C154538243C7B40BAF40A3011BB4DA012AC966C79513E49E52A862C858EE5C5351BA7F2007A3D64A0A5E2E18704C09079EAEA4E65E1AED4E92303C13F71B2D80775D34B9471404CF4B76E0C714F9803FA466302FD89A32A3BB0C6E177F246B908275E389AF627544C943A8FACAA0107177F2775B4BB74217C39A07B4540B7E3DECD1D6D7EE84E792CFB3F07692E3919122A2E9628FB0CD2950EFF8BE359371772D0A72753B137BE50A61DA4EBB1B043E8DE925752988BF1189BB71BDCFC1F79939E0E4CA9A832FA93ADC02C7E0E196466EBA0140846C5104ED565EBCEA58BA902E97B58204C19F213109ADD053567A4AD703B7C44A7839F0F96F91E337C49667737984A519071EE9705355C04F6D79EE51D0368CB3BD511E552232EE2130B067076383F31A4F1C0DEEC192967B8836B1D31B53D54A786C11E3B5613F9F900A9DB9E7AAA13A49D4DA95885E40F68C7E2FDA072E89E262968151C3709B9123B0656D244284476C19173E5B66B56EEF8BD6002BA26638E84CF14064BF7934BFBC4C7FEBD882E137EC5D500E443C8238E9B1D80656EFE37A5F34BC4C609F21CFFF8981FF2A5DF4AD63DF3A6A437AECB1982327FB88B7F37BB1F12299FCF201EF89F06F11F7A114C876147AF0FC9129C30BB8591790C4DEF5940CA66E698BBD1E0AD993710F481A643CB1B715F93552B7E8948812DC790631D4BDA80CC6517073CF95B96AA05AF0B76BEC5E1C196487395CB26E676811630B980E619319741438A2F7C9B38AC325751F0F68E5923D0770BD3F4E91775A43CE6AE0FF282C79DB019C43257D1280EF062DF19E20C8320B8DC12A2E499D6A7483B116F1DD08D08BFE8D1041B477C052E81DE3F4A0B7488AC6CE12F0DAA5A458390B5F7E02A215D4301D10B0E4D2002FEC04C1AB450EA1CA32E08CA14976C0BC8232D1689DA9292D0CFAA811FB49881A3A0EEA8D4D07998C432150A0F0B83E32481A111473663EA50C1F7594005099D0393E5A41B344F349E202AF41AA846E87B69C9C6C99A20356689CB127139F72519362A733C82139DA11BA1A1A2552F6F88A86CF4FEC3BCE326EAD14163532E4454CB125AB2AA40D74252DC605F19059D35C955055D853AB235DB17502137F36B2AEA041BF1FB15F71186F7C694804A22FDE93F3FE68F0A1AC90506EB0A810B9C4678827C8E092BDFFE10D5B4D17A3C9741E3C1E9E67CB943941AD0607F3E4A6A62F68B11B86B27A27F83E98DB62A1358E4E84A97D64481F929588217E21D29A542A4945414D0B08267A0BAA17EF37C17D0A224B054B02BA222680061AF1C2D404047271FBE6C9FB1341F5E6747AB6F5CA63D5EA81FA444BF032BA040EBEAB3BCEC8C9AE9BC497A733EDC1837CFE955FA395473EDDD3FA88BAA47E140B4A8A14E286CC85CB4317F148D374895DDA9E34369B5DCD38F93CD92507F5375DBD7AD5761581D4D18A86AE17058324A4971532538357D06C50E83FB7307C0BC29FD5250CFED2761AA77E7537FD44420D59F20B398EBE58C5ECC603BC191ABA0DDD8C2E1539B3EFD6DBBA150802B94F33F2AED8FE2BE0FAF1F62F24541CDB');
INSERT INTO "frozen" VALUES('231117d7446fea023a003a0d9314b180914a6637c85d894549449ba8f1df52b7','power',X'7B2270726573656E74223A7B22737570706C696573223A5B7B226964223A223535323732313462323461303433323139353636643835623038663636396166222C226E616D65223A22436C6F736574222C226275696C64696E67223A6E756C6C2C226C6576656C223A6E756C6C2C226C6576656C5F6D223A6E756C6C2C22706C616365223A6E756C6C2C22785F6D223A322E352C22795F6D223A6E756C6C2C22726973655F6D223A6E756C6C2C2270617274223A6E756C6C2C22757365223A226C616964222C2262617474657279223A6E756C6C2C22626174746572696573223A6E756C6C2C227374616E6462795F686F757273223A6E756C6C2C2274656D70657261747572655F63223A6E756C6C2C226E6F746573223A6E756C6C2C22636162696E6574223A6E756C6C7D5D2C226369726375697473223A5B7B226964223A223633633532366261613535363434363161303763623138633465373063393763222C22737570706C795F6964223A223535323732313462323461303433323139353636643835623038663636396166222C226E616D65223A2241222C2277697265223A6E756C6C2C2274656D70657261747572655F63223A6E756C6C2C2261745F6F6E6365223A6E756C6C2C226C696D697465725F61223A6E756C6C2C22616C61726D223A2264726F7073222C226E6F746573223A6E756C6C2C226C696D69746572223A6E756C6C7D5D2C2272756E73223A5B7B226964223A223332663939366433373835333439303638353361616534376464323135306238222C22636972637569745F6964223A223633633532366261613535363434363161303763623138633465373063393763222C2266726F6D5F6E6F6465223A22737570706C79222C22746F5F6E6F6465223A224A31222C226F70656E696E675F6964223A6E756C6C2C226C656E6774685F6D223A6E756C6C2C2277697265223A6E756C6C2C226761756765223A6E756C6C2C22737472616E64696E67223A6E756C6C2C22706172616C6C656C223A6E756C6C2C2265787472615F6F686D223A6E756C6C7D2C7B226964223A226364656464613162303532363435353361333934313035383838613730393533222C22636972637569745F6964223A223633633532366261613535363434363161303763623138633465373063393763222C2266726F6D5F6E6F6465223A224A31222C22746F5F6E6F6465223A226261626536626565663634313431616662396139616233333865373732626537222C226F70656E696E675F6964223A226261626536626565663634313431616662396139616233333865373732626537222C226C656E6774685F6D223A342E302C2277697265223A6E756C6C2C226761756765223A22313820415747222C22737472616E64696E67223A22736F6C6964222C22706172616C6C656C223A6E756C6C2C2265787472615F6F686D223A6E756C6C7D5D2C22726F75746573223A5B7B226F70656E696E675F6964223A226261626536626565663634313431616662396139616233333865373732626537222C22737570706C795F6964223A223535323732313462323461303433323139353636643835623038663636396166222C226C656E6774685F6D223A362E302C2270696E6E6564223A747275657D5D7D2C22737570706C696573223A7B223535323732313462323461303433323139353636643835623038663636396166223A2232656164336564613134323436653938316662643035623636353838306538633464366431373262353336663132663666313832303065383862393762316264227D7D');
INSERT INTO "frozen" VALUES('46bfbe8a4aeea1f90a6c3c12dd08f9361e5b861d7241cbd8e1428b263b4bc329','part',X'7B226E756D626572223A22432D31222C226B696E64223A226D6F72746973652D63796C696E646572222C226465736372697074696F6E223A22222C22737570706C696572223A22222C2266696E697368223A22222C22756E6974223A224541222C226C6973745F7072696365223A2231322E31222C2263757272656E6379223A22555344222C22737570657273656465645F6279223A22222C2261747472696275746573223A7B7D2C226B6974223A5B5B22532D31222C322E305D5D2C2273746F636B223A6E756C6C2C22707265666572726564223A6E756C6C7D');
INSERT INTO "frozen" VALUES('cc462d6aade99b6d850f37587cc23cfce2698a965c1428852d9fed81e2af6963','part',X'7B226E756D626572223A22552D31222C226B696E64223A22737572666163652D756E6974222C226465736372697074696F6E223A22222C22737570706C696572223A22222C2266696E697368223A22222C22756E6974223A224541222C226C6973745F7072696365223A6E756C6C2C2263757272656E6379223A22222C22737570657273656465645F6279223A22222C2261747472696275746573223A7B7D2C226B6974223A5B5D2C2273746F636B223A6E756C6C2C22707265666572726564223A6E756C6C7D');
INSERT INTO "frozen" VALUES('0a1fd385719f443d58ec8bd17a0b3bc46f3dec6df5569e134519208f16824cc1','catalogue',X'7B226B6579223A2237346534393836346333303266663930613137343137356438636532643934303930353463336430373130303330363532333233343263643135396338636639222C2272616E6B73223A2265336230633434323938666331633134396166626634633839393666623932343237616534316534363439623933346361343935393931623738353262383535222C227061727473223A7B22432D31223A2234366266626538613461656561316639306136633363313264643038663933363165356238363164373234316362643865313432386232363362346263333239222C22552D31223A2263633436326436616164653939623664383530663337353837636332336366636532363938613936356331343238383532643966656438316532616636393633227D2C226F776E223A7B7D7D');
INSERT INTO "frozen" VALUES('6184104699ad3f12cd376ede4dddd46145668d4ed28aeea3acb863a696c93369','project',X'7B226964223A223437643334313032366233633432663462373733656533316566643537393638222C227469746C65223A2253617665642079617264222C22626172655F756E6974223A226D6D222C2273657474696E6773223A7B226C656E6774685F7374796C65223A226D6D222C226C696D697473223A7B7D2C2272756C65735F6F6666223A5B5D2C22707265666572223A22636F7374222C2263757272656E6379223A22222C227261746573223A7B7D7D2C227465726D73223A7B2263757272656E6379223A22222C22646973636F756E7473223A7B7D2C227261746573223A7B7D2C226C61626F75725F7065725F686F7572223A6E756C6C2C22686F757273223A7B7D2C226C6561726E696E675F72617465223A2231227D2C226F776E5F6669656C6473223A5B7B22656E74697479223A226578697374696E675F6974656D222C226E616D65223A226B65795F67726F7570222C226C6162656C223A224B65792067726F7570222C226B696E64223A2263686F696365222C22756E6974223A22222C2263686F69636573223A5B224141222C224242225D7D5D2C226C6576656C73223A5B7B226275696C64696E67223A6E756C6C2C226C6576656C223A22726F6F66222C22736F7274223A312C226865696768745F6D223A6E756C6C7D2C7B226275696C64696E67223A224D696C6C222C226C6576656C223A2231222C22736F7274223A302C226865696768745F6D223A6E756C6C7D5D7D');
INSERT INTO "frozen" VALUES('1efc3eb4566e4b8f157a296f746725bc0ed15621ccfceecd116e92d681cb7acb','rules',X'7801ED9D696F1B499AE7BF4A428B41BB015125CA67D9D8173ECA5D46BB0E945D5D2F0A03839228896D8A54F3B0CA33D8EFBEBFFFFF89C88C4C921275542F169801A6CB22931911CF7DC7EFFFBD333ADE79BE7334980F7BD39393F970D15B0C3E0F273BBB3B8BD1623CE4BBF7D3A3CF951EA8FC4D35985747C3C962363CE6A1E3D1FC6874311E4DF4E47C39FB32FCCAA7F3E197E16CB4F8CA6793E962C8278783F968AE85A6E7E7D34975311B1C2D4647C3E7D5205E3D5F0C26C7F36A34A91667C3EA7C747C3C1E56D313FF351E0E4EAAE5643C9CCFFD772C53CD075FE7D594C76797A3B9D6385ACEB48B1F86039E185627B3E97975C803D5C9E068C84FA7FEB54F72383C99F288D63A9CFE518DE6D5C5E0E8F3F0F84575C9BE87D57E75C97B87D568A1EFD271F758633C3A1F2D38C8EFFFC9D98727C319FF3E198CE7C3FFB35B82F272B4381B4D7ADA393FAA21A9839C8D4ECF2A0ECBE223003B9C4C977CC076BC9B31C0FE0B2B026E7E782D7487B3D974C68319BCCF9E00DAE1C56036588CA693E755BFEA7FF34850F5A9A717C3C968725AB1AD2F00247D351C1C9D55F3D1B1E13DE0270FE327DAFC8BD814103520A6CB5935BD147174606D14F940136149C7F38A83D3C1886D4C271999E782E7E56C3A396D41F3F79DCBC178FCE9FC7C67777FEFD9EECE7BAFA8CFF86DD5DAA170A6773FF7D684DA6A7E361C2EF4BE973F7E78F7CD8737EFAA97078FF59EEA60BF3A1D2C4F873BFFB915BEE68B11245F20AC26FD4068E5077C3C9D98276F8CA1D3E1F47CB8987D7D5E1D0E21916318205E3A1E8192D3F100F0410B030872321CAF42BAD9C18D00BCF1F80070D18354678309606A8EFEE3F2FC10EA06C88305F09EB0DD6A315BDE8A2A8369AAE3E1D17880D8A8044C632F38197AD72EE6AB8735F9B40865E339E0DAF3796F00E92F8A537CF7C7088041F2FEBAF2D721184C53961E3C7E2D162F0733710E8F664ECB785CDDB408F4643A5D5CCC469305C83C0921B47A96DF77A688C9F1E0C274FF64EFE1E3DD9D9FE293003BAC122257D2013AB178055A8BE97808BE8E86028DC5DCF9F07C3AFBBA8B9494E03D19219B37537C806ABA229E3AC082F174946D09FDA620D22E38CBC5581C2C81311FFD17FF90C068613CA0641099A777BE9F5E422F006462AC56E783AFD5CCE8BC9098CA7BDEB5A21A4FE7A262BD9F2F67BC7E3CAF8EA75AA1A38AAE00D8E70942AF173AA3773C1B8DC59759A8FF5D5FC21D5628A12FFCC876EAB12BC03B9B0A2167E9AA235C8A1993AA043DAC064F497287B6D2D197133E3D9D0E0B6EFADBB43A44BB1908E7A11C5F54DE63857646089D56BC967F40AC4943C4715A78D8C8792DE88CE673CB88B5D0915043CB5A95F8C1AD2C886B417434584ADB2145A6E3B188438A7F783A4313ED0A5AA3D96E2210C1F08CFF6998F6E5FCB3C4ED783AFDFC02D5C4E68149DEE6ADA1309D1D0FA596D7422168C48FDC238D0CB3A4930561546746C834A2BF251EAFA30CEFACA68C304C6E491A22DCDED174392965F2FBB03E927197280E60DD4208C3D0227E763C97257901AA655F2019645E7E09B9223931497F276196AC9797C7C742FED174361B1ED59243A651B24343E26EC70663045AEF88056618D23D61A12080F77C8955A76FA5108EBE62314322C693F4F836C7EFF241D640CF13F787ED209D11A6EB5C949CF6D135D7D88ED70E62D9DA48FB7FA3AFB449A848AA6D618EC96CF5D2C7E3BC882FCE5D3F22A6FF2A32BF96A4BA305D2B7EDBAC1512D7506EF0681102DF792B18E0526A5091C83E81FE035ACADF9A2DC5A3EC383D89DBC10B82D8843DDBCB7ED807F1B74767535499BF151357875F2DC9B6A44D4170834FA2AD24EBD65BBBA35DDB9C38FB61D23DF895BB0DB4CE86F8408B2040965BA3F4372A9B7348F0B827DB8185321DFC38BC4C7604BC35A8FC8C6D836D4860D56EE9104173A25F86880A396E720C87E7D29A3883D5A45E1ED758AE4E83BAEDD0C36F7A2699E24C3FF93D365D916671BC6D8ED3A5E82C25F06CDBC683FF34D7B43CF2E6B4197F3AEE267B762BD76E7E86D52FC70EFBF683FE9D1DFBF9390E1E52B07E7BA8EE4B1CE333F97D8BCB69E5C78185E1F3026B14FF885D23D49330128837DAC0BB588F2727857D5D1B8FE19FCA76B43D554D970B6D4BF8ACB7239D725F46B7FDB61E96BB8C8F4CB81FE46F8612C07EC1BD426B71EEA41A93B2BABB10DBC6D37C510DC6CBF3D164B43CCFF10181FE70391A1B30DE7F613ABCC762AACEB0B6B2D01056FC348637665632340D506B19BF603B7E38243673ACE04909ABEF717AEC4D0DF0A7E445EAAD381087D33138D392E9072D785977F0652FAB5CA05F44A7BADCD2617D9C74DECE31B5F4E36FFA4F300C3029FFB51468B4E4C968365F882A07C7D5A3C7585A589D3CBABCF0B783435155FF310E1B522604C7F0D86E76D20A1F89B5F1A8FDD024C272244886FC6EC91009D0C79C591BD2A2D8BC881C7DF1CFD1A93E5508CD91903A4EF5FB0E8EFD78F889ADEDEC1EECEDEFD6FE53F77DE2059C7CF84547D1E9D8793A91F0A6B84ABFDFEF1D3C12867927E78CA09C627C389C30DBF168407463384B919C47CD6AC2DA7891F75EAC258E93EB17A2643EFA63F1B57742A0891081A4B98CB7A3B32B997CA3B2083A2A026205EBBD8286700F9272F2719BF8D57C89911EF0C1E8C846D45D08ABFF643F40FAA45F46E8D88128744E50F16CFE97EA78640130987DAD1EBC7FF7E1E3372FDFFFF4F2AF04E1B2C35F3548E02C2D220A5BE85C0671262128E4441C9215B0E011AC521F75AF7A697662896965799C833DC309C19AD3E1718B657FDFA9B76214F7F71E3F7B8A58CF62552BF89C19AE0DA2BB24A49831D670FDBE556212AB7CAAE3820FF7FA5AE937C50409E542A9E3E109A2694D78503FF4A96E4736478343F6B6E89DCE461705C5BC8E8F4324E8BBE0BC1CA7BB0B7574C4CE0A6AD38E626947CF06A09B80DD8C8F8EBFB650B4911B8E06E7BDF3C1E2E8AC75A673999EF8C8E38BD190408C1F804822B8880C28E4E69F7742B11ADB6B6FA5652D43C6DED2643844C64938F937D98F3A1ACC66C44FB704046102BC34D16A090A7FEA5713B83B856D868BCBE1504130A24B848F58F32C54D29F0708B221B10D90A25D808F829F332E00466CAA75DEDF77B091BE9A2D1F66394F5C03A761CD5B317B1071B2B1007DF3B28D86D466AA4A28E89D8C97F3166965DCF88B88F94AD6C701F106846F12134E2581877B046A1280421B760291D10509A29A920B23A6A57E3374912B93D3C5193B6CA1A24D5C5D41B8BFF7F4DB87A524145C452E0E4F261313CDDA4040B8EBF0FD2E00C9D8A82E46625529D5C57236997F3A1C7E9D2A72651DFE511F8137C7ED82772469C92140B67ACE7815C788710C62991713478C3BAB5E11F8CC204121CF4A87EB75C66DF67B93C5DAF2945939FDEC1E511B01D1D63A29BE15D238EF58A2C466A761B4D6237F1D1EB5C246F8D3E9049F9592A9E1DA5E47B1F836155CCF1517B3E93F892D61D517A2E6A3250AA499770BA85A0FDE0460ABFEEB2626EE1A0CF3333803159277113C7A32BCE4338B40E8515949D2947CB2988DCEBBF2A63E5C1803077B4F1B53600D0370C62511B7C8EAE6F76DDAEDE6FCC570399BF65AF0CAFED477E99B13B9556783B1427943101A6C4270508BDE51D6C85685B21563D6114F467F484ECF8F66C3CBDDEACDBB1FABFEB383C707D537D577FCF3E1FE4359E8FF5ACA4276545111CB17D5C3EAFCBC40F92E5FE1682AA5C3A78A551E493595F65DB8087126E3253EC8502CECFDCFC3AF9FFC675B152865A20DF375647B25304230396F22C994DFB6BA9B5DBE932A3A25A132C73EB560E231920FC562FDFDAC78F26AF148210457D6BA39FE4F07445AEDF6153CF5CA6EA03C0632BE4437CDFCF288ACB8E5AFC9604AE9F63B9240478046927C40E1C019CECFE8489E700EBB345854B059F0B74759D7222C06E3E9E9D262B940E164B930F29E099CBF49CA5F0E487247BC982F9D16B47BE4D7213E4267893F7F784640389EEEEF3DF1E9F58B277BB86DF01F6167C28DEF3EFC543DDD7FF6ADBFD61F8FF61F1E246FF346B9C420FF790F4757B45020E4AD19038F3DBE21D649050841BF6015D24F785637C4C3AAA8EB60E279351FC234549E28BF25EE478029BA7609AD4B1B537BE0E0B81071B13C1C832C08725E66CB6C13A463854464CBADB79AFD8E147E1242912A7E734B366E540CA6DD736544901A05B47E1B8E8F7B98430DEDF2C77C311C8ED9FF58353537D109D78435785B295AC235D7EA629A1B9CC3219DE2107FCB8C27A303DB43F69D209D9FFB538EF03DB52C505586A9CC1CD8FF12782271139F19AA32E0538C5DB2EE72744C8821854FBCC350778EC854131C8AA914E1F62011154402A800C9F77C585B92DAC14C06799D08EAC464052C55B4DC11DD59F8BCC084DD14DC857CC51C47A4437196CB7DB089D9B084854569F23A73C85687ADCFC57B74AC16E5FCBEE3434AA559945933BC77590F6440B517AACED27ADD9B42BD2AF6A330BBCD317EF2D5C657E748CA7E211F8FC9782B6709C697048F91C02744E2AE306D1B6C295D375F4C4B57FF1AAC194D33225DD079FAE55D483BA34BF050765AF6C48314E8118266C401914058F50A0C1D4D2FBE1212EA806185A54BA4E55041C4818476445A8ABDAF03FF7D2352F03A14F1D786B5A04625DC71D8D39DB3DC09A5AB652DEB9199449342647F3EB7859F1936C9CD19E99C38DC68725B2E12F0532010C45BD041B60E91092536BF9C3A16D63B98B8827F445FBD93E5A4EBDBBC4D1F65333F57947C1E5E281B7A173EC9AB390BE052BF57DFFFF0B27AD97FFC64EFC0968CFFD97FD865970E7318226C3FB4BBFE4A9B042E790DCB3FAA0272BE2FC94938343F616B9EDF864A69B1CC46ED6FA05D0E07AC29DB27BB2DEFB59956A4A779E62E00EB6033ECD47314DC8C9346359EEB44D7C0C73E315510D294C33FF01247100F16CF1C4F76BBB39E0F4E1544B55E2ECEFADD187718E7C9DF627E594EC92A0DEF24C4D160461C5235BC70A97670AF5C8AADE0C553BE44E695AD142D1212EA90C0B41229041AD3463A101AE0F6397309500EF1D754D364D986DE19A3DDB03CCCE6A2AD588C94496353E48FF8B5023E0AD7BB7E4D3BD80EB80E6DCD54B799409349E917F4B2D1ABB8B037914A59EE01841D725A8109795ED55F81C9D89E79C8F80796C4A55C636CE6DBFA9CE444479F87BD135752E4330609413BF12DB8108928B28D45B25CF494740BD1868A66977761A146C23CEC172286CC584EB228C6451A67831BFB628D27686D2038A4FD67CA292480E84807F292AECC2BB258A46A2B0ABC21B2131921327664F97074F10B71DDB625B6511A29EADF0355AD8CC0C73A15E06FB0AAA8622D2AE705D8DAD8FAE7E0AED194882AE498C7156014BCAE73B1939A6DC7B3EA4C499DE4305DAE7EDCE2BCDF7708020F4E87E7C44EAD79BFDD7B7C5024BAB49DFA85D5F912CFD6F06A434BAFDC4018BB94D93FE3690752E42C7D7215BBD722ABA64A098ADAB316D5036C5B2E67544788E4EB249E2820E5DB23DC91AA51E3D14177A344C4AED8183E745E39E5AF23EF7D852D10F9835E44AC1BB51661CEFA0839669C534C02A1CE75470EEDEFF51FEF0348007A0048247A9420E293A333A2C58E5A65FAAA1EBCFCF0C377DF344CFDF8AF1B496E45BCB5C92AEF1E4D1A8B9AAA9299A02F1DCE29C20D3A2A997B7BAB91F0EF109CC197ACBC944CF85939801A80BCA05EED0A049AA2E2657572351B8FFDDD9D37C32F236B7D0A3E24ADAFA205BFAA95D33FF876EF402F4979FE5BEDAD7E61777B0737DDDD66D17646FB424F89935E323CB3F2F8A86F2A7D03855823DD8365DAD18CC4D75EBDAEFAFB84430FAA0707FB077DC8ACEDC13D5771A642B1160FA29728587668B6437A26B5CC3DC97D58D4C730DDD5962AAEF044360512E172304147B488AC80977A399A9E2597C9AF042F7E552D791DABF036FC6097635D9B2549C917DB17D784397AE4378AAE87E711BA4905960D107E768B809677717B9818D84CC498F990FFE6587CFD2ECCB6D6B9BBC18883C7444377DEAF4423EA35565F297B0A59C1B2C92EBC8203AF3BD915A90D2A177A3A65D7AE7B37E9D96533046CB2462093EC15CE038A22B5E86004DC0F7670C2A75352166896C89F92B809E3E2455210119D943D40D918FD28636212AAFEE0FFC358C140A14A553095F1098AED7A34784DEA1A07CA5D5C3A9A89390AD0F3EFEA97B5305A5072BBFD8E94DDA2778C8C3B4AD5D8AC9779FFD7157AD6D378427AFA7EC016A82F5E7B13CA46DF4654EE70A83E064120F6065852145DC467D35E709F61ABB5A0D2A5F3BE3372DBD0797BC72B2B6C3062E2B4B1C77507DD4CE8B65C1D76DB42EAF861DEBF2ED6B6A5ECB9458CCDB6370E7F26446DE092D8DC15B1B71F843F3D6F362DAAFED464838887BB49A47522CC88EB207B89ED0898277ED1F357E237D5446D83E0ABE26F576277395FC2DA7D1BABA4272EA4F2319EE52CA7F880D193AC8E0853452FDBDB5A2E4701428265C0E202ED9BC3F3E9B896020899305B0163CA4F5E2169775313EB15C629B1ADFF02FAD79099BA37A2AE683C5D7E2157753FE2A011766DD25091A5E8247A36C4CB626CD177BBC0E0760C0D7A388EE2BC7198466FD52B6C40F915705428FE1A20464A5A0FFED9E08B609156BA0FFE184CBE4623395858C937DC1C52E301F2FB1A50F99920B82F23555CDC13C45E543FBEFDF965F56C5F89830B55773CAE1EA4C5944281714F4787E3E18A41BA8952E7F2FDA37E82900407CB96861CAD7B017E7A2DD41A90C0544E6BCAFAC493A3D4538B591E2FE7D7382C1B0D83B166125C8315C935F9D835435200A8BC502B82B4A5C6E9F8049BE0AB6055AD6458DB5A8655AF04EDA3BDA74F0E1E7DDBFCDFF5C66C3E1A60A661F350253148B90894C91B0AB07636AD20858BDE952775C04BF533AA499B0B3251544E57EE4A55B980A8B7AAD7F6D201E39BB391BD01FABE78D7BCA78A7740D8B6E4FC55D8E347F45B455DFC9F8C2E9F0CC9AD0D596D4723AD84B93E2A1C7EDB00B17DF6D8C167D7F5DDC7A9CE45D4F5BB72495F36FEF485DE0A8D60880059BDB483B22B247800940459CEC7B7A089E2D5FB1D8FCF0FDC2BDD27733F32EB006B39472D2B2E6E40AD5A3E866EAB37A20343EFF2D3F5D9B10CB6C651CC59B0D104C7C566D96D2029577C3502FFAB9C8CF82A008AA574DF34993DA794C3350061ECAB80255BB284D596A6A3C4E1D7C816D6522A9214DBD39D8437A23712003DD982CAFE17DCFC8B1F283304C543F740830AB608558C81903B4BF10DAE6922B814DE487DEFB26D692868B698EA645C64223A429A4131544E867B665DB09B83AFB0794363F925306BD8FDF694B383103069822B1D01B1518B39EE13812DEFBC80A209AF8ED610F5AD4344F74D7E3FB703329A68035020C094E3497E7CAABA3517349BE930B1375C5789DC4AB1B5DFDDA1CB5A855D211855F6788D65A047EE1B8C2D97A0F60B736146760B8B90722ECF2C2A05EF0C3EBD339A9076A9889B9FA5FA299079B11C3BBA700B804A20A966BC67FFA64BA3759E2B7F7B2F2C8EE57E41E1D271F2A90E9774E6B9DC4F296431BE15B5FBC7DBC56F969EAD1C5CB4171D5270C3EBF8C3FBB43A32BF9BA0FDAB5BE5346BE04CA62BF079156BFAE58EF2A195EF114A60E28AB3BB86394E6C4B60EB2CAD4F845D1101F52EBA9361517F790FD86ECED11145ADB55C4AA7D2EA5A0F27591CA20A851015B96A316B49A58DD2D707350DF43CF5A438EA5B4D30AA93C27A90C5825CF2A3F77AF0DC9DEDEA37A9358697A0E16E708EA6C6A46507D6DC291A689EB987CD47B470BBFA1373408A2F75EB4F0A4E14673B8BB3DDB90F497D32E9EA78B494BB9D8FFDCB945A7E7B37B27FB145C09C9E5C71C969C3B31752E438302C64C9E4A9506A5CAD16A3736249B61652D43667BCB076E7952B973EBE7BD97BFC84FAEEDE1B72822A36F10EF4FB9EC79878AD36C462E3B9DDA5E1815F54D5EDF56468B83A4A8BCB1D516102AFA6DC6F3CC49453E3EEB1057B6689285471C54445EF4BBBFAF7F79D583292D24505A7A043F459706C9CD708076CF0F39E578FAA3FAA83BDC7343E5CA18929729C501F34C5E3234D5CDA883F8F97A7112F993BE1A16C821F6811E61A0C756BA1051AD3A0FA6D3D91CCD950D539182847835493DF003899DBA6499BD92E8982EE103797672AE88D3D39B41B98BF60BBDBD1A4082EAA301C74CC44F99E8FA3A420D19256674BB7396E7D24085BCBC5C08D342B4BA5F1A1FDA2AD60BE12DF3665CEB1F962AE507B8052828D5F2B462DA12220049EE4E6B9A42CA52F5345AA7E156E1E4334481C6174C8B46C018E5803BF6C1711A74A52975DD48DC0F2CC53F39BB9D7B4EE6DEB7D1D2BE60A1A943AE8D5B5152B82FE37C38B4E0AA6365A44F2B8422A1E8B7853EC747755EBE72CDEEB15A0BBE144094E95C5E5D6D4E44588A9451E2F2018572C8AE5830E81B0326FF5715AA0DDA8E7A0099B6FC20FB0CB34A9A3977232C7EFD795AC6FC1899DC33F4F961BCA4CE54CC95C0B9195329E04ADDCB164661545B93C827A331261395438C682A1A946CE9EF825D93B612774E095FD150159803229BA42237F52271F95C95488DE92633B20AABF58DE6EC476330C5F6A72028951A54AE34B5391C22EE009994DE6AFCBE696E47C58E89DAE54CBF92D33EF851542CC68D8AD7EA0C04B09DAAFBCFF7B48E590C91D78457DF87F783C526B2296FF5ED53FE80B9FFD8383066AC1DC51AD928C998C7FD1DB6E11EDF281442F45C1583A5464A86F0034822A390295C1F60A7885F88FB72959023526999D9F6EB1DF8DA096100E4CC4FE72173AD4D905CADA626E01C14494C45CEEB04CD3105A2028469EB66231526BB31129B7CCE431EFC4D24CBB5C1FBBDAA076951F8B2AB38DBCAE3DD31FD59A69F89B60909C1BE221A6A4A0D93B91E60D80FC3AFA52F48B30A253F469D0047A0DE88592A901168480A64AADD3203A9E8D9816A48DE93550A6BA5733293BF1AE0D10BE4291588241C9F05C696EBEC41873694E048C5386A3F14E6F4FC4D19ACABEFD32B5C060D8AE69E7ABA5628BBF650864EE16234B67E7CE9114D1690518EB87250A3AA4ED0D7C2AACC703B732BED58606B13DA4D18099855987B8148BAD4BC8A6D8B0DEB9E108CFAB8367FAE543D993BBD168CF8FA98B150DF44CB0B14C754055E0548FCBF0D4881ACDEFFCA48385591BE98BF7EEF98FDCB69F70085776B12B2EE2801B37A30A442DB2BF9F57391C45D9E8C3FD4731CF5823056A929276E289527ED6365A75EAC64557719904517AD97F1044B002BE62075C20BB07CF8D20BDCA76F893DD8A99C7FDE885E88BEF5FE82F0949D88452D38D4240B2722502F6BD1C882644392765CF54EE90C2B9FDF6F6C47A0361D022D310079950D7D0DE7A665F235675688B55DCA3381B34A9286633A8E80A12DC42B43650558F598EE36495D601EFB515087A9BE4C8565640035D3014DD76D7EBB48D8ABEC3DDEDA0E3A622A341C837334DB722E10AB86E45A56B466C0638650A4B7835649B20212B38EA136495FCBBD4D835948B88B5D4CD8532CD063B10AF693A2A6BDEBB72F14A924EB84C26980BBA20ED90AED0D11508A0BDA096CA805280535CE15ABC281BDB1ACFF92B7A01338A8F1587458C890291A8997785A73B2162A389D68AAC47D9BCC8401C54C7D93DDDCA0D38E181268075B5600711DD6CE32BFACAC9059DABE9544B481E95ED001E77109C001C89B54BC0281C33557C3055E277CE91FA1FCDAF86A900C7F62821BE5E880B55BDCCF340374B9B1FB259E9A959D9B633486E81039B4E7ED3FFCEE3C5AA9E266E445993004DD9098CB63AD94CE3CC0014C8DFC6D87E236DBD5AE91B19354029C5063C0D764731D280A8A6BF95AD7470786366D27EB5E2154C730577C8D460F0E3B41C1AFE9B7AACD9B7FD54D4B7D5CE5803364075146E6F811568A20C3E363E606D086AD950D88ADAAC38355A768351C3F2C9757EE54154C55E2563D39F4E19602F29F6F240E687DE68938302A38C1E15BB65FE4F0E9BB84CAFB9B0816512EA2069465036772DECEE3844AB42FDDA2B0A238D257430BFCB4BA4F040CA03C88ED77B3B0CB6E59C7CF233226475D97575F78FD3506E1C277F75534BA8B3275A556E9CC052B6A8913A18A02254EFC700917CF5478EC5D441115CE7A8B83686A23F6FCB4456AB69201C710AD565DA02E42C695EB36E1455D4921E088A7FCCA65BD07537B891052B125340F28007DFFE528B5E5B24E651545C84611B020E259C4FED4DF8E8F1A3CCDC32CE43FFD2717FCCA891AED8389C8D3843380DDFEEEDD3A2D595A9795E5C5DA5936AF345A15A2694F19552040745902A2B35E2D683F76B9B15D202E661AF90C27D74D76B516EBF594C5D22B989CB37BB0409BD1296A5F7FA9BFECE8E4C895790133FB96F041F5369160CAE9B0E64C1A45373A1502DA4D6E0B82350E46036D324533B5F40D5DA0C91E126DCEC880A9CB1D075085374A779F3060BADCE366EF1CE8D6E9AC56D2EA4916C020099ED3E68029512573E80BE7438F16E1656A2A96D34F5B5A62EB25A9D490E8D05A3F93811B0E9963DD73A3A4F180D4CAD3179E325560296C957604B2E9BCB19AFD0D601628B8655E086C440508893A953BD4F8FD81D6171186C801478C1A4518AA9897BA7CECE469A646678D0D1277F5DE58D34EE2DD6C8A105990A440892F2A8A3102D9BF85A979BB6804657AF4A2AEC5D1167981A1D4B608CC412CA3ADBBFED0C90401F7249EF5D45A0CD831C354E8FDC547137665667CF5D88278F62157A8AACD50386729DCF9FCC1B48376960985081867B619215CDFF21449092C391950FAD07264C4E9AB485FC064C3705F946406BA81AD4B599B2BB74AD8317E55372614CB9ADC0702D6592AF84C32A63DDB4653507BF5C01C1289076C23DAC85D65C44397FCAC5579ACAC6C110D335FB892215483C57EB77E61ABB3531A50CE85DB1AEC49BA27D574837F9033D99D6056BD4E50F61524B92FAA461D6DF025B0D83DCAB1FB28D8271F2AE9497084A70774E10C257BDCCB8274BFFF4217D9D96ECC5B9EF832AC8C2832A0377FB0CD16B4AB391C66E1141422F145215B242A6A43A7E9927CE1E447B2695F69AC35137E707FE3AE45CBA23AA9350D85655A84D6F62CE7A6A91875AF361F5B4991E708241ECCD86E9F111C365AEB9108AB3D858A60A2495F9A98183BF52CB89C1505F8B25CABA6267A22EEDAD08A2FF9BE2FBC58AFF8EB03DB53C61E567C33B87EEC109ADA9DC254445B4A3F7616B11C671E229CA7E440065B87E83E1CDD58C71CBE22315A82A545F3DCEFC5BE99A015B003E394B35E98A957C42E3975BC6A2D6911B834B097A1A742F521204E3D61495EA3384EABBE411F0523400DD4417BDD4EA5D7010CC1B50444380383A5B5234822D7ABC6E745B49F79C3DD3166364269F83F9FAEA2C7953CC1A306B476349128FBAA3E3509193B058BC988A91058704E2B3E11F835320C0AEAEA1F180B7DE5632FFDBC85A59288AF9647C29EA408C4BCB145451C8CD6B56DA359F17EBD5949D307CCDA2268F524EFBF869732936B28AF3ABD93B7407B8D5E13E311F3143E1A9D06035313862D05F943912D49414B5766A6124F486CEBF91F64F06E723A62E01BD1FDEBDEF7DF8F8A6D77FF494F9A3FDFDA75489F5FB4F731ACD3B517D79A2876627E98A0DB51759D0FDFBB65363AA7F904AE2B2802808C35E4EFE5B9DF35BD0DE46B72F9AA5DD7D0754B3C3F77684664BAD7D40D2B6833012EDB81D238B8B4A080B4F7D596C91405A9DA89ADA07C92CDA6CF3CBAC277254C40DFE5E56752C7299A34447953176F0344FF5FC70FCF5C5F5A1C55F86170C17900A4E941BED15797CCD74F6599A8F2BEB9A90B8E2BBAC8B029E0F46F58001B98B2839C558ACE2BC63FDC9D58018870C84153DD61ABE80743BA4C50572A441A7AAA4ED790C4101EF9F74A99F24731EAB13759A9A5FA14044CBA6DD00EE6E602B5B4A598E1046E53A50BC4A6E646438946EABAC1B3A996D953A3A9FF8D66470295D44AD241B929103C234F1D645719E84A1BDFA1014815E5709E0061774490C2F3B2A5E4EFDA8DA65A44F748917FF355CD3F6926995D1C7573818B262792E475FB7037BBEA3AFE7C157AD5AC877E5F57D21DA63FE9531D03C7F1B14247A6F41D7974627705A917457DB82B43F84756985650568B0E5431A46BA924B88939F28946BAC16B50C9A10E4F4BA4A77057A8B588DD548D8C9F9339D7E2BB2F6F64DD72DB0BE4C53C48C2F534CA40A124053C9DB70BCD2BEB625757741CB154AE64BE877CE5B33A3F9B30B78CE37367A71A0619395C30F4ED4C47CCEADB0D82EEA13DA02F6266651A90FC5AFF1486B122642667F4EDF737324611CAB316C3AC490577B1EEC121A057FEF506583BA10C25CA42457FAA754A46747DE040B1ED0926538798414CC845F14548AC240F485C6B88981F3A83721E99652A6C6C3A3BDFE1E8EAE0FFC987F3F7E9E87BBA45D407E8E12A4297A891CF2B6F81322C4D9BE30E008A44B205AE082D0591AA292B246F5ED0ADDD49C67903B52471899D98B1629267A4D55646C337B3AE60A634251AAAF461CCEECB20916C75F3C37384F954158896FD8C11412E702E41BE04101D21E5A4313B00A21FF323E49FBEBC0FFB926608E4ED24C9B587D4B9C7452756D94540F909F07FBFD6FFFDAA0264D8E3A208FF6CFE961CFE450CC00ECCC93E2EE1B369240FF4BCEFB046AC24A63940C423DEA57A16989127359D88A81143DC9582A06FEA8A60EC3567D8E5487A6AAE2E80515E06E0A67C5010A207FEFE07407B8CE70AB58203C81DB29D43BC395BB36F31660410DA9062F4F187954CE5F6E41DB6189DA38B2AC5E978336999F12D609E512E0771DF325E689C858D04F901E9003564EB505E7CEED6A698695EEE8223CDF70159A2CCF0A13AAF04EFF3822711AFDFD357C56CE5326825A3651280F8BE502852DDD712F1AD805B75444E35D3F471C75D481665E1E43D7BE3D41E5DDCE94BB48EE41F72C45E8FBEFCA1DC914916C0F011BA5B908132617A369BD77EBDBD0B38ABD831CD44556B30000F4B450B1C97E4CB042747BB49178324BFA0F9AED22DB457A2772B4B10ECFDC8BDDF2C8F5F31A75634A72202AC6834E929E970008191E2B6FA1496F60A0CBE5272A668B663096CA8C143F1F22FC28FC516FA625379F48F1DE04A2A8A05E0DAE0CD2F7524CABC892A68F76EEBB815693FBFA4F90BF3A8B547197CE1AA764709C3A45B3B6CE53AF43120817F653EDB105EBBFA87E7D8FBFFBF091B1C5BF0FBE7D844BF3B5B6062115D9599C2189F5887FA6361A771DE9ECC2F784681FC54554F8B8F80D2F40D7FAA57742FD79258A9768E131F3E411AE374002511CD7439454FD9EF879CF1233644D47A66F89808D5EE86EF578EF0FE3E1E173FEF978EF29E850503ED63CC1491AAA1FDF8B5FA512DF461551F9782422F9849136F945A25F726D1AEE2C4AA6B258DC2AD30B95290CE6CC80A579ED2EE54F25A41C7045060F9663DF2CEFF86F9A166D56809C64B887D99964926AF0A3C8ABDE8ACF7403EC5C68F0F22A8F7C20F0EB2B46A9B5F168660D5F989FC86E5B9172FFC3387F0EE330207C48C113CC902517667FFAD0F6BEA54B161D7737F41BC1150BDBCA28A5C3559CF2737BB6C3F4C2AA387A2CB261D198EC993D9A3EA9354EC10DA8783E1C9465727F1BCC35DB1211363F9F42C6FA1AB7E370C61F932D854B37E6924C208B5DFFBBBF8F1F74EA95244C0B873F4B7162505F55C28A39E59F25D6B125A1AEBB6BA32B3F20222D4AEC0CE5E16F3A4D1B94EE2ECB46820F2B8DA02AA7D0AE71CDA52671B6604A8B24AF728894BA96225B150073820AF945F2A8B81CD0913DC49A46C23D4F3908BDB513236E2513D7188631C3BCA0EDEE7476F970493765789E68F038DA1493E08E48D466AFB01963A1C189BAA62407C3FA913952483F407B950999D46EB1E7F4B2D015C8F4E25DE2871BDB8B669918DC9A05C4AF72AD552B5D50E30D04C3150AD53180C6E17C1E5E7C5ACA235FE58700D7C4F76134E29F3E74BEEA2AD1B1B5B1F8229133D042EFDDDC58FC7D27832CD202518DF737EC3486382EEA13899A6FEDF0885357D5E9AF2AEF5EC5F7FF68CE3F47732E279AF7B76275FEEA8FD7C7686CBC39A47327AFEA4E7627F1CDFB342B73EF31353508605FB8231B3CB90539D8C9080BCC5628111F4BEE717235359C9E40A7145811F89C508DA57E7C55842BDE012762EC16118848575D1BB9CFD6644F016C09F32CC03E6633D35FE4CD50D2101E8B3F95F289C0D06D50D50CF18F8066CDE97E37A7D53597D4B6E95097CED0CB3CAFB7935B19FD0C423CFFDD8AB17575610D742B0509FB0C80F462FC1F7DDA59381F3F16B78BC18A967EB8336187BB5F1FDF23221B1DF58EC510924EB528AFB8D7853B59CFE87A74DD810FE8CBEC342F90D029D6BDCA0B5CE978238D1E23E8E91E210CD5B9B2F64DFE4C6749A3EAD70E3D88EFA08422CBD835C1D64CC75F303BE2B9FD76CD58098B4A902CA6E22B5DA263BBBE350331D936C09DC0A5E39D0D67BCA7D13D5DFD1AC534F3D129132905AFE2D5386C8438F5A16CAD98D92C63AF5EEA6238BD604BA8DF2F5B063EA9AFD28D93BA88A6600942667C417E872D88216590F1758BF6B787DE7EBEF32AD9B0FDDDEAE91E31A008D24E8F8E965CE84E407165C92DCCD5D7D39928A084D24CB66F12297A27BC2BCBA0315FF17CE9F3C2D8C34CF6380C1378ACCF54174219E922BF5412159111125F18A669F81E46C6F6400E48F57C8B6301E4D7BC8184A8D94101BC1AA0D7827983CDC42D0E82EC01E99283BD87D5032E1911B1E9B25F7A8AF9672DD3649F119E6845894882FB7992C4626D3C99543F14426AB77AFBFDCBEA74491E69CC8806D22F4E77FC315244A121E47218489420C701111722E404BF20E2E8E7C829C50847FB2E4B955E76C40AA7B05879460BE7B3DD9D1276B63BA525D2CB6B5BAA0D8FEE715DD09221E2773FED03382EB13546F4D60EC46EF26241D12F4D9559026ACE3C43430ED4989315703384F5F63688D192A70CBB68437A63F07BD8BEADACA7145D416DEB2E337B4E800752D02D9FB4E778BE86B4F52DE8AF1693FDBD6FF79EF960BE53447F7E6B275FD7D7C435237BFDD082F9AFE6DE1155E326C69D339D67AA09C3798750E4C560C24D5A61E57353C9A3546F50A01941D341732BFFF1FA6C4818D60287E41CE9BC019D95F0FA488D53FCB096B979D1B82E40B4CECE941189149F275E3833EB9A05EC0905310F07A4C0C9CDE678A51358721F0A7F0C8906A70BE7F325D94206012B7188E5889CFDC29D5178B80AB7293407BF1E8FA6646D61389944694F2293DAD691372D387D4AD3517676051795407D17E80CED141A02AD134FE75749B83730D58B8546BD2154BD7011231D81405B566C76B5BD5B0CE15A9A6533EB8D8E81988F2FEE8FF44AA522D1F764AF5F5E6AB3D74712AEBBD706CA209642328A5CC72BA4DB6EF58E0134BBD52FBBD507E3FB5706D48CA910920E41F29FC4C3D577D0494AB63D23D97641CBE1E7B1FA8641ECF17011E608C28E379F321D427A3399BF2BE457FFD8EBD53F26945B50A4BF4BC8DF86103F2266250D9DA2674F8EE3B8D246C10402436152644D465D471882469C22BBB2B23B54E6EF3E211BFA8F455CEF691395F7EA8F5F540FF72B7EA5BB09A3484482BE2E66CA59715755AEC195C5B0A679EAF50FCBB77BC4A7B542145625A5B0E91D3016F7F74E76769F3CD97BBABB53BBD8FE1C7C44638AFC8811E61BB7E28D0FDDCDB1E97DE3E9E0F85318543BBB3179E3E730AF1C430B9E1A3424626B4959BECC4859BE6DA0BFB897BEA6B09285FB9E40B28685EBA7D119AABD093509D7DE81612D9D0EBF92B66FDD89FE1B13A315864BA178509AEC4093082A6C1B45D1B5A6BBB0A68EB82557E04924A4436E8A8449EA16C213661B0E90DF9198147D234EB4EDC87D8460099B3BC2A0BA5759768FF2D82FAA8E823483200209EB342BE28951A7A6B9650F709710BE389E23EC987991A87D8F1E10896B032828E55AEA9CBAB8CA5FDAF22F08A5B4CCE5DC45904F32A3BEE313D693885E1EE2772E969B6F466C453675C4D561A604ED7561572A4044C368BF77B6E35B7784C90B5A55C084A7958274C52CA0D8E820D5236B06DA68232289CBD5417D0BB0142130FB0AB89A14441AACB88CCC900EC153029981355070225FCF0D734E49016D9155ADACD9AD3D03D5055B319B68FC5280D6E9ACDD944CD7A5ED0C46B42DC561B2CAAB2F99B7699A861C0915A9E5E8FF23C4A4D0B26FA73762AEC0C8D5634E5BE48BB8E4DADD8E03FF1321A1F8B0845BBC751BA9B3EA1ED5E62906426D0D6CA0E0BDFE7E472A7DAD1E643F21599F4DF4A2900B1F94FC08B0F8005F7C2367616CA9EE17868FC69E90122ED571490716240D62597F14169E34B634AF54E347790A29F3AB3DD4DA5C0E5DC153FF5AA29EB12CBBAA289D7DB3F5A6746F2F0F4CCA64FC8A214352F0DE72AB2CF4CED8E0C6978DB6D989EE9A1140E937D9C7655768C300ACCD26CC52A47BCB86FBC1DCFD618D64C2EDA80B947598F3C144B74545F92AAF89ACA300C06BAF4D93053F2C6959A7E4E64868C58552848748BC463D2A3D17AF364588E973158F51455109CBF033EB717F9DCBBFF14A74A5DA4A6B989059D0C556F649EB901AD65118AC1DE2D8800ACC944D52CFBE432FEBBE42EEFD6C472D7F91ACC2480BCE86FF5A129F5B69F5AEDD85AD6271E1537257656DC1BF34DEBF0BC415E462E2A8BE5FA587A7A974B6CF20B4A4372082DC10E0B70D8F97A9B27335E9E69A9887FB002DFB8AD8976154EE56B240AB1F0BD1D0A9ED8A302A32255FE89799EB6AABE178AA8A1B111A167A2B9E52B3FE4ADC64747874AD119B182883D064525B96D969FFB62B146DB84F4E2E06F5FB01A584D4CF2B567236FB304126B6BF457AF9C31CB27ABABAC026C283CF105331B27456162B7CD0170858DFDCA12FEE12CAA0153649A755EA794C9003A5A06A45C42C8EA4A769CB7B1FE2AAC3D6165E3A91A2320A6EA63D75A36EADF844CE8F649D612A54B020FC41FCAD23ACDDBA93A4F1B152BAA48E46B425C5B96251696F3BBB0E0F7C483BA53589A854F832192130C1679BA279CFEBB00500B6C71714BB202A8B97AC383383740A59F1933FC8B1B1F1E844C3A600A0FBB416A3B1EE116E7EBF0D4ABB4E87EE51AE5EF69FEE11493BD83B80F151CC94A21201927DA11C38EAC051750240085F64773C491055756D84E1CE341AF72FA0D3A5E3949EFF817BA029FA38238C527C1A83A2281524664A5D06DA04BB524101BD56D2FD98C0908EC18FAE572E2F4FE5B804A8A8CF8A41E379935407A0B66CDCEAC5860D6F0564D93102862D08E66CDA5AF2D8C4630EDE5E19B336D0D06ABACE4AF7B4A9B07775CC79FE7E442FBF38B290EFAB76DACB372F55C48C01F68861944510DBFA388F3AB5B103D942D217E850B95CDFEEC31C82DA9C995D7117781DCCEE46AED9440AC86C0A56D7C0F54A08F6E6F52FB04CB9944782D83ADEDA3D0624AC895A1B881BE2D6E2AA95F35AA8FEFB63C7F42DFC73258FF673FD2156568A5DFB40101F3D265D56BC23A2C5280FE9A97CE042E9B855968A53C565F5BFD0708C2C4A55A8DC1A389A204CAF35D43A45627101902DAF45CC63534BBAFA7652E4A66561A59CC393876EAC8F1C666C2D8754830A648BCBF8237CBDBC6AEC81D17B8CD2484DA2D1B1FF8392030D0A44BF756C67D3F9361A65089EA3B35EE45B4151B6E17F92A01393462A5D142E9B570FDF2B22918485B395C6BBFA767165A46CEB53C1F548F2FE514C7D9537196DBA2EB3424A800A1C7CD84E975DD627C93C9BEBD342C20669FA1C8D398D5D8558541E0F6559DBDF765B25C1A9AD6A2D254EDC8CF6F7C40D94112B01B88E779F1AB94D03F0419FFBE7297043796CFBFB4DB2F870392743CBA4717206E3D2DE79C517168049EB1057CA8FB42C1F07F138E595C2B7534190661F8ECEC370DF4488B5307D4BB7AB559D03CE7E9CB6F683EA1FD59BD7695B11BE66A4DB178253D68A58C26E93821C564CD75A37E3FDA263655A9A8A6D7111363B560E5C61DD88E560493998A7321C655984A34D9B2EB9A77D2777D4260FE668BEF959ABDDEA67C78FE6DC7A42A70D89F1FA81EB20DDB54774F080013B4C549DC22B069DCF94466D9F70967A2D137871C79676D0A2DD827ED69DCA0DF1432EA8845ACA029838595D1E8295128303A4FDD8E24DCFB7968E5C2E8A29575C6392ED151D3A8C3CFC2DEC18FC62E5A530E4952B8B4167511A6EC8408EDC6D8D8B5DF691C5701DA50609CBD2F42703B25DD6639D8E54486B30CF54F999BAA6A5C95C407613B113E15887045A10E692E3FA1550A5D3159E76175BC36C76CFB77ED30143CB8D6E632778961E53BCCFDE013FCD42FB8399593B1954AFF52D19FA20C02DD0B26A5DFDF8DDEBEA65C4B3ABA707E1EFD3ACC03FF79E60723D3D50071FD3EC7D17EFB7D547E98B39230E1EBC8C663FFEF58A2774B02864D5295518FB7C27D16F9C84D0CA4CA179578FB4F7DD01A6B9EDD39701E1AD60F03A6BE36F4421DD9357E1B29073FA875EA633BD3EDBABD276D96D6B8325A3B7028F09E6D0B605D0CAD5296F0AC9140C2BD1BBFEF214EF95BD14D2B5CBF35D62A801579AA00AD0C7752036ECADAE6D5367EFC817CFC856708C5CDC91057E0BAE1BC5403EF46CAA9B823395FD83F0DE80795B4852AD5B24E12F717E10BE37960013A5ADBFC46BE7D583BF8F6647676744DE211EDCAB10DAC05DB93816C5F0F23D54F89341EF7C26A757FDAE1CB6BE7E5657C6CC41CBE88B6C84FE378FA93358E02E54AFAB07EF208327FBFB07CF5882D40A9698581887417E11A1D303532D1ECB85DCB691AFF46C932EF610F924D5E3E85E0C869EC5253FB1257D50CB13BB59F170230C2C9BD370DF404C589A190C2D04FDBE1303549D69FA7444DED3DAEDA3A7AA46FA29F972F502FA7D87885E544F1F7376A48398C0DC5A3DBB5ECC80879589730177E546440192FB4A9FC4305DDF85148A949A846DC801DF48EA255F34B6B26D6D5742A7FFF049162D0FDE08711B1B57DFABA0CD7B5377BD0302BA7B4B2E31BA6A0C3E27D2FA5BB7EA2546607C8FCBFA33277CD0DF592DC53328A62892BF051B40314506D143139B7E6570C7D67163FE232F18EB60F08E8FB1BDFC5B8A3345C7AEBAA25237D01449D094D3435DA20F47E74B787832E4A2620CE219D974914B4B34A719E2F18E0E352638ECABB2AA0583B4A5ACDCF28DE6ED83A139EAB35C4F7E492CB0BF1AEA71ACD9F074892B26BD213F2A2779B9A5E72F99896E81830EF1293D496A490698E579B64FEBC5C3EAB5B5D2BD742DA26F8882D4188DA074FCA7510F104B2DAD5610502F41598F4A167BE067861ECD5B49274ED6500253CA62227D286A44AC617A1A19484FB5F98417D7B19CAF13FFD8114B1CA30203BFC98ABE445DCB25A6F22F2645851DC49994E10E786D8180AB99BF81CA8705B846CECBB70F7597EEB2B32455A3B9C600B0B2F320D6071A97A3CAD7F600D68DC7CD029B40B1D48680579CF997FA439F37D73964A3B181F22DCE8CBE5B72328EC5A007A665CBD5AE2579C404FF3925A61200377553F7202828542B89EE43076185B30462AC2CD19F7BD56F6E46618520490C663D9A4866931ED76B971317429BC31CE595AA2AEF1ECBE64832C0A10441BED83B0BA90F060ED528610D7CA01814960DDB419AA3255B3622476AB6D7BCB740CCEBDAC0CE4240CF6E8185159B2BF1D7098604906E6D9CB6FD31B252E7381FD1A2511C604E5983C0B9CE63092F411E88D84FC29C7DB5E5AC36AB8D5BD23707BC01546270595747FF8671984444F0228CE9B5D29C336DF9960E5B4B9C1B2631DCA42EF67540BB68D0641D82284D36B5EE3E2F9EB1EF1445D2D06757B553E5A3C665AA3BC2806FF91C2A792D3CF706C4AFD47B0CC5EABA67898E54648771A693F32764E8E4A942B1B876B2A751DF6E696DAED65018D942E664356251871236E1ABE54460B0E3B5612816E42B3C7550D25CF012B24C3A3AB8EEA6AE751EC21514CACA480B4F0487B73B9AAE81DAFBABC010415045B3B17D1BBF42D4E46004D06E8DAC8DA4B52107028CA5F530BBC19D71F67B625A5FA66253A1A1C51050D4440299B0525046672AE375D7C7A54C6DCFFE5A4B017EE7DA69F2F83999DB3C72531475D020E99F40E961831644A9FA0BE5EED68DE3D940020A5BE0CC0605050F035F109E8BD04A33B0C82AD711B71CB23068B24B68106E8CB599018C7CED2F1F1B0F6013E1B74316A28D1EC1A982F07F55BFA1E25549A10BAB6138C2A8525F3C7B53606A6FEBE470D7666888FD6304F54DBB526E7A438AD97933FA3B838BF69600C39A67FC026F7B3B80A47A3254DAB804CAEBA1AE20909AF10BF3BEE3A11634D20B38C91561841A1E1DDB949CD7F8F3407D19D59157FCAC61324F7CD31BC6F97F48BDE12753816F4B9DE0893FEA85F3BC81A30A4A335449E09D8D96E769059D29F9BBAD6BB8050043B529E44B475771C3CD804936B834D9DEF367D681095CC409576FC8DA0A94CBB9E32B4703DEE09C837A0B09AE9218E65CC496A9FE06944CC7F00339BA7CCC95CB3D22C3D4807E198C29B3AA630FCF9EF40ED285786AED85B490AAD5F9CBB3028E57736CC39381C4DA8A487B54DD68EA5C52C24909376E99B1A141D122355F3813A95EBF0567A63161AE10637B9686804A6D6804709D542B7ED5915F82B72E0AC712D7C0B5D1425073A6235D2F55FB8E7DEAC28DA068D284E2CAE2026403421C2FE6585BDB6E918DC66366364E3D3FEBAD7A94FF48112DF6EE478264BBF2672B32094CC0B7248E4C0314E9C18504A7B52C36908449EF2859FCD904C7AE213ECD3DF70BD2FE662FD10D056153557D6DE0B78E10AB69404CDFBCAD9662C155BAE6972003A2AE85F26B4187F3BA0670AF3337D8F34A69002D84B199C2710DB4AF175FAB21E82E384D3DB58A5C59E5058C08DCCC6F1AFF2097B1E658B6A70E2DE450067B0E033E7B52F0DC2F1A896418E6C3D959E17FCA9F1A277AAA59104F9F77EBD8A14692C4882D6749CEF6C6D3D3E596824DC74745504000B273FCE3C7E5F9214B6831AEB577E8C360BA15BDEA086B34E6F324B5DB846C12AEE554437F3F53F79F0E38D9B039206A3066DBC6B7D3C75D7D752A7523111A0C546FA880BF00C46BABAEE4E4B4F46586F2AD40D21136CD319534326148CE27626FDF2A2203206B399A45D528E73D7AB864EC7F3BB63BC24DEE6D38F62B5418A2528F84CA49A03F9CFEB1D579D77019199AB5B1EEFAC4F55ADD639B0CD3876C60BBD35140311B1D52FCD343E469207181D45F52C12726487AA80E9AB914A17BC41A01DC8C7BACD174D6EF854DB47A5CB3AD09304AB9120539702D8E92E5999CF4D70C0B19D3A465BCEB01891C994D09E6F5EADB1D3C0FE3F20DF479B45671F8B769EA57D437689F725459B378B62546EBF5379D7E25C8D14675B81B9D457298C887CE5B7E51FDAF2731943DEE5E82CC71165C6265D6837E3462A5015DA69DFC82158ED90E649F711C72377E96807FC73A2054220FC88E9E997213CF5F0BA25502B95E02A832CF812C134D97296C981D159DE61C0224E62D6F7770BD79E5E43F3B09D625BE1BF3C43554D120F11DB37252E9B0F613073B9B4AB2A5A9125B1E6646CE65F534FAF48EECBD6DFCB8C5C9354D80151A32D9C476C788EB6D7A8CDC948CC8E4F8212EBDC9869543A01AA875DF68A9999581772A3C77D1EDA1744BDC7F7412868F225E9ABAD76031B362BA9D87EF29E126294F2E3545C13CD5A34BC65BC264291F4393EB7B2291122EF537AE22BB31385619B3CBE8494ABF451EE8ABECA8335C1E167105873E9E2F5D739A463AC8DA91E84A9911FF8E1E57ED5D2E07F9E2D0EE87BA09C3DEC7F5064ABEBA7185C295A255922ABBA15AE51E445687E8157D8FDD7BE43131158532702A148C574E24EF0F1FB52DFF8928293E1F7117D1D3A22E5928C3D4228F084BD84B2F3AD3B4304C9417402FDE8E8A7C7B5357CE7FF415AF392C2396BA7FD87500B2CA34BAF0A57B26CB41AE2C0EC0992A75099CE69F74926BA4EE7326CE75BD78D4E59D4BBAB805E5CEA53B2291C861EA9C80543017076EF2FECA529535C1B64B0C99E965C18DBF865B16E428E7219E48155636ACEF665A080CB52B418832ECBADA906AE6AE6407F1F6769462D848E13F58A214C46FE31353BF76A3C76E2C75AED18D21841D444FD9B43093BCF42AF5C426D71050A66ABF29F8CFF2276B91ED842F9A08FF306CD402D71288F9E35CCD2F218103E545B0BA97AB183F9E1E91E8C5A6E24D8501DD050833DB211AEE031AB99945750ACA58BA020ECF16C544402F66F5D00B81171C49580BA3700FDB604AD2CB3090665D032CA459849C22D1A9E42CB9F464061138DE0E5867EA34E6F61395F9B4C8467F67093D277472BC3407A6E7D96D8B31368069555BA5DF7387134E89DEAF6B17E2FE5D2CE958E6391F4D8097B87DB736F309FAC480FB071FDEBCA346ADDF7BD3C9897D2D2216AF4B272522F8DB01244AF0C96F5011539609BFA6E10E3AA06F2484FE6049208F1CE648E67D0B16929E72E1A62A816C93CD2A3CF470E1663E572B370BA07F28663F65A0B7CAAF2599201E59F67129B6A644A4D001AA8CC087A46CB05EE96DCC3F8709E047A62A7CC81C76B81C8D85F788CF44A5806633312C58A11A9B091C2FA6BBAE3DFA76D06C7C7612345C26D71888AF6BF7798EBEE490047446AA6B4BD1103613B9916D61DBD1FF1DC0B27292BAEE23D4326EE5C9241E72402A865BD408499E93170C7B887845BDD5D42326F2F448EAED80004AEDDC4AC61710F83B05DC62E29AB06AECA407B73DF91654E51101A6230913BDBF4B63E9682AFF52901093AC0159B695390895A1B0ABF67D82C8EBDA00DBC1A3A16CEE368622873DADDA818C68DEFB6C9ECE52BBBDC76DA1B42D7DBC51197DAE6538A4C32D5D7845C5E3677D93246C10CCCD0E2C410B0C8B93FE9C989C6F3C6D22F3E70D2960DBB365446698E665BB78B42DA7977A1871C9938D708B1B26AEF703525CBF47067152462A7F59528468059023FFF9891646B7290CEED40A497AD143846A59A807B00E4BA77A35CE65D59CDA03444D881F7ED010FC0F0A6BEBD8B3A52AAB10B588238DDD3FCE13F75C9EAB4C2D1E858A6F7910FD34D4D5704851371FFDD770365521755D2E9F626AB5A3BD1DF164F8751D81B75943333F2701203F72630076951083B452FAC78757591B50736D6880CAF0E0130889FB551BC0BD95A3283FB384D9CDCE59BF328712FE918BA0452C54D6A5DE82FAB9EB4EBB8578CCDBCDB55D609BF2C2CF20B62CCB22E327A99414AFCBCC0C9E1AA1FE3A8C8DA8A1D10CCB201E6012FA863F7D250C4BD427A85DF635C0332BAA0A47E498116DFDECA4A5066BDD0CBE73CAEA4A4BEF435471FA63DBA31A8AA007AE836BD706D606EDEBAC26D6B14D4EB821010AB20726B67FE62C7ABF9F8A7727536AC8B08A018B7BA89F32D1AE55F0541A77CAAD6835ED54755575B906EF957ECBC42B6CE9EF3A2514D56C3783577A5921B4DF47517DBD0A5930F2B55FBD9D5BC06D63A5BF2213B5F040CED405FAAE9F15005C1FAF447453F51E758C29D198AA36EA9D26A986C8E34730926A9369BD1749E70E82EAAA9BE5537D7FBD2D3692CAD24200AE94FC632768082FED7BD44005A1A5CDB490B0A198FF2766E73510C86199860DEA29819412EA7D1D9B6F43713F379E7281B2CCE1D47DF45348149C2C316B8085586E01931B2F2D0A5F93F2DF9CCD0B094E5BD9E9BA64FCF7A901B246E41D496E33AB6E244681B7550C9FD0C94175AB89BC86B43B4B2C7DE69C3160740910C085B7A1B216E2AF0508A5305C913957E0B6A30F208DFAAB9B8AAA2C478183AB8BA132F9CF8B286BF3D6353FFB2BC417129C12C8A6D6598683AE66A0B1562D151A38361D2FC549059012ABC000B9F60F1341850B9EC863192BD1254CA4DD24B85DCF2D1B811628616AA97DFA0264AD868484B86CD6A8218147AF03E1AA166D95BC32BE03385825F1E249D1CE903DACE883F06481D487923A236453CBF3ACB24269D359ABE9C23062F80510A7F4269902222B7E1FF5975D0A63BC6774A8FC5B3A33C8215CBAAD3F13EB2F1AC82CAB5E116F4A8092A8B915C03BE2AD9031DC104BE8875C072850C337DC8876243641D089EE74266738F4A8A77C6B37FFB508F0445D45BB6B8D121567759A20CA63656414A41D09FD165EE410626E77F50334C1E0647D4728425048D4DF82454B20FCBED380282AAD5ACFB20402C567CA3C0CEDE0BE1C5241FCA2DA1715628D2B7EA21B5EEEA3502AADC3E51074710FCB32E5B79A392BD4C637C2476D8BDF0AC1C151B9BD8E019B7B7498C63DF39613645829B45783122CA2BE9717754B6BF86198963859F2521FACAD09EF1711B228692616D93A4376406B9924BB3FFC993AE41402845889BB6D6DF46A7B5149AFB95B1D8C46959BC6AF1D705BCDFB0CADA8715378A57B2CFDBE0D8B564F54AB7E3CC93CBB890947A597F9218C0E117476DCA5ABF2937184ADEA6A0184B450EEC85B03DF953EDFEA016B3A0D55242C18AE1286DCB78FF77BFD2A75081FBC321C0F5E377C56175DD5F056DA4A7DC1B8ED54AF8B0D45EC4DA770EE13AE6932DF0296ECC0C68C0157F2FDF37D752D8415EAA50D69459819729A8BC784A4D18294EEF39D0FF1555D57C657D7E9932CEC333CE9A7120325C20EA2527965B83A949402CA0750E7B9263D2B51C360CAE4295092BB47152E524014A606D9D3A14E67F6910F5098C7D583431439D57EEFBEFBEE3BC667303DB5C44D03FD608F2CE4D2F952B9E31A9146C061D64E98FFBED3A67BF9EB204693812D7C371C58A8C81E90043E5CCE1599BE94957FBA7C5426BBCB47E39C99B1D202E260CA24D3206D032B42ABB94F521E51A85EAD95E1507D434CFD1903A90A7078918BE1929E5E82239E9EF8DD1F17D01C1B01573FC7370882F100318F0545E721B7B7000909FBF31755DF89904614A34E8E7BD40A1F839B7E20EC9117613FC3E34FFEA906556826C0F77E0FCB48B6C47E55EC1FA959CA6ED301AFF101E2ED315554D3913D7BF9A71C48D06B35D7345E3B19425460C761C709604C0366DDA8A4C1945CA54846C7E68A3A4C05BECD3AB953EA4B44E95363893C45107E0765D62673544472DAE408E73DE9F05B1E55FA8242F57FC81EAFE1AC7A39E18A19229B6528016E2EE8425262E42A6FC1B96ACE6E3E357BF2E436B1818EB04C491549FA9861468C0872C17E77FF714C587CC17478721904013CF06D46FEE4487118EE37210A5B4EAA502A2F07561C95CB31191D0472444D3B9A80B9BD9C90200F6B87708B0657385722244EB62FA6CF3600D5AFAD6A8EDFFEFCFEEE83479685A9D7BB93F16A4DBE7B7FCF0DDEF5A1AFEB7555A5763B8208015D27FF3B14B2FA82E405A05A08431BE162FDE03E073AB93F26FCA7D08F08E555772AE9FC3A4227960D5369E7F9EF85A26B170B10D7655450ABD5F5ADE29EF1D17527EB6AB6BA555F7702B4635A1CC1A3FB22D37A294752A371F08638AA2CAFD41A9AA8B8B889AC6C387567892C812C2C15591F6C9D02F6050EF5C4D582F77F9150CE2E8B1C18E567339435D48F2027773F7491AD6F7A1A23C31757A4CCADE4D0498D925B7B0F7433573CA471039B16343AD14218A330750D20AE9B6FEE21CCA23D3BC1C5BB4A7523558A5F1A9D6D34741EA302C802F957C82F32B5092A9BE8AA654005A0539F5809E7504FD74376DD80D755BFBC981DC63CD03C417FFD7D21AB5339F33D437107CEEA88CA96C8A9876DA6E19AB5DFD850474E4B2B5122D0D6033731D35080E8D610E5FA2E491CDFFEB1154455EA0107F5A6273D7A0ECA209155449DD989C5F11431BE7C5B489D1372DD83FC62D64FF3E7BAF4BC756DC34619A6CDE87CC9B5C53E2517BEE9806D511469C60D877CE792955CC3929CFABC08F41965DB2D7975F7C378511F27D5CEF834814DFB243E29D58392486A702F127038D0DB1DFB72C065ED78690AFD95EEDC6FFE1CAE4B9FDFF3D9CA2BC44E4855C88BF0F19E531060C7DAA6FFA96E92D731639B10F2B0EDF36ED42CE95C94AA969500E954FA140527A1C23FE837BB7F4A7462334C27753DCFDD6C3791B5DE1C0C62BD0181A6132D2731B5AB106BE9541696E832E75CED706E79AC6D2D044BF7021BA2B9ABA9EC3FFF2FEE8F248B');
INSERT INTO "frozen" VALUES('8bcbde68e6ec7336597151ebf2f135a3a6ff2f9b727794d854836b08926c2385','revision',X'7B22666F726D6174223A312C226368616E67655F736574223A32342C22646179223A22323032362D30312D3032222C2273636F7065223A7B7D2C22656E67696E65223A2263653135316632656565366532636133366532663332346236303862393661326537383231613834306438346665653331666161623939653630333136613763222C2270726F6A656374223A2236313834313034363939616433663132636433373665646534646464643436313435363638643465643238616565613361636238363361363936633933333639222C22636174616C6F677565223A2230613166643338353731396634343364353865633862643137613062336263343666336465633664663535363965313334353139323038663136383234636331222C2272756C6573223A2231656663336562343536366534623866313537613239366637343637323562633065643135363231636366636565636431313665393264363831636237616362222C22706F776572223A2232333131313764373434366665613032336130303361306439333134623138303931346136363337633835643839343534393434396261386631646635326237222C22636F756E74223A322C2262697473223A302C226F70656E696E6773223A7B2230223A2231626533656131306535306339396437313864613264326331643262303963633231653435373035346136366262333539366631643462633439306663313831227D2C2266696C6573223A2263353666623130343562633830343639666338373034336430323834316430326164623831396334626133313631656132346434653338646336653263336134222C226F6666696365223A2239333136626565343464386237646664653561333938623163653635353436356135626266623436616339346631626330313438646564373638313633396665227D');
CREATE TABLE hardware_set (
	id TEXT NOT NULL, 
	version INTEGER DEFAULT 1 NOT NULL, 
	name TEXT NOT NULL, 
	notes TEXT, 
	CONSTRAINT pk_hardware_set PRIMARY KEY (id), 
	CONSTRAINT uq_hardware_set_name UNIQUE (name)
);
INSERT INTO "hardware_set" VALUES('eae97ea7cf044d958cbd519a53a55f72',1,'HS-1',NULL);
CREATE TABLE import_mapping (
	id TEXT NOT NULL, 
	version INTEGER DEFAULT 1 NOT NULL, 
	fingerprint TEXT NOT NULL, 
	name TEXT, 
	mapping TEXT DEFAULT '{}' NOT NULL, 
	CONSTRAINT pk_import_mapping PRIMARY KEY (id), 
	CONSTRAINT uq_import_mapping_fingerprint UNIQUE (fingerprint)
);
INSERT INTO "import_mapping" VALUES('a4e90d394efc4ead9c8b0fe268b2a764',1,'f','Doors','{"Mark":"opening.mark"}');
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
INSERT INTO "issued_packet" VALUES('6b4152e0ca224602a23f56861f02e486',1,'babe6beef64141afb9a9ab338e772be7','2026-01-02','keeper','case');
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
INSERT INTO "kit_content" VALUES('d5ab62bb71484aaf8ad8c2116806c26c',1,'43b5d2cd4d1a4a8fb364385ee80241bc','S-1',2.0);
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
INSERT INTO "leaf" VALUES('9c12586156554b41a2c5747e892c0f93',1,'babe6beef64141afb9a9ab338e772be7',0,'active',NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL);
INSERT INTO "leaf" VALUES('ae50fe78d9eb429dbbc5178c78f4b0fa',1,'babe6beef64141afb9a9ab338e772be7',1,'inactive',NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL);
INSERT INTO "leaf" VALUES('7d23012a0a0a45e09cf7bdb284f288c0',1,'6946997d95a94997842a0d769c767f32',0,'single',NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL);
INSERT INTO "leaf" VALUES('8b60d5c6bcf6462689d3c05c4a945a8b',1,'1d711f3b145f4337a4299d8c37167466',0,'single',NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL);
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
INSERT INTO "level" VALUES('59d745a448eb4f0d8431a0b7f05f01c8',2,'34fb9ee21cbf4613ba728b46ced9f67c','1',0,NULL,NULL,NULL,NULL,40,NULL,NULL,NULL,NULL);
INSERT INTO "level" VALUES('e1d481bb41b34922afdf70740f4a9800',1,NULL,'roof',1,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL);
CREATE TABLE lock_point (
	id TEXT NOT NULL, 
	version INTEGER DEFAULT 1 NOT NULL, 
	opening_id TEXT NOT NULL, 
	item_id TEXT, 
	CONSTRAINT pk_lock_point PRIMARY KEY (id), 
	CONSTRAINT fk_lock_point_opening_id FOREIGN KEY(opening_id) REFERENCES opening (id), 
	CONSTRAINT fk_lock_point_item_id FOREIGN KEY(item_id) REFERENCES existing_item (id) DEFERRABLE INITIALLY DEFERRED
);
INSERT INTO "lock_point" VALUES('babe6beef64141afb9a9ab338e772be7',2,'babe6beef64141afb9a9ab338e772be7','70100838c8c44074ba7f609d8e7adbd4');
INSERT INTO "lock_point" VALUES('6946997d95a94997842a0d769c767f32',1,'6946997d95a94997842a0d769c767f32',NULL);
INSERT INTO "lock_point" VALUES('1d711f3b145f4337a4299d8c37167466',1,'1d711f3b145f4337a4299d8c37167466',NULL);
CREATE TABLE office (
	id TEXT NOT NULL, 
	version INTEGER DEFAULT 1 NOT NULL, 
	name TEXT NOT NULL, 
	text TEXT NOT NULL, 
	files TEXT DEFAULT '{}' NOT NULL, 
	CONSTRAINT pk_office PRIMARY KEY (id), 
	CONSTRAINT uq_office_name UNIQUE (name)
);
INSERT INTO "office" VALUES('069367c78ce847b9a34430da94db7422',1,'office','format = 1
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
INSERT INTO "open_question" VALUES('e26e022369074f32bbe88f5a83f587e5',1,'7d5cdc698f2e4d6ea01a77d85aff78d0','babe6beef64141afb9a9ab338e772be7','blank','0012','hand',NULL,'{"before":"LH"}');
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
INSERT INTO "opening" VALUES('babe6beef64141afb9a9ab338e772be7',6,'59d745a448eb4f0d8431a0b7f05f01c8','eae97ea7cf044d958cbd519a53a55f72','0012',NULL,NULL,NULL,'LHR',NULL,NULL,1,NULL,'key',NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,2021,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,'{}',NULL);
INSERT INTO "opening" VALUES('6946997d95a94997842a0d769c767f32',5,'e1d481bb41b34922afdf70740f4a9800',NULL,'9E4',NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,'{}',NULL);
INSERT INTO "opening" VALUES('1d711f3b145f4337a4299d8c37167466',2,'e1d481bb41b34922afdf70740f4a9800',NULL,'W7',NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,'{}','walled up');
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
INSERT INTO "opening_fit" VALUES('babe6beef64141afb9a9ab338e772be7',1,'babe6beef64141afb9a9ab338e772be7','case','9f737a60efd3e7749fca3581fe60d2792f2094640b394a4735876f394448155a','program','a5ca83876477bf081178c26357410b22',NULL);
INSERT INTO "opening_fit" VALUES('6946997d95a94997842a0d769c767f32',1,'6946997d95a94997842a0d769c767f32','c3958cb63914e37cbb2515bb228775eff6bbdf3376a40d5a68374065f72a2b88','4d1a5b681209a263fbb5d5c98b568915f236ffecd8d4f070f0326407c934a9cc','b4301d3ee4a51cecfdce6596e6990955','84d8a6f668ce7b7e99626905490ca049',NULL);
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
INSERT INTO "own_field" VALUES('d248267dba6d4177a21987674a4e4728',1,'existing_item','key_group','Key group','choice','','["AA","BB"]');
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
INSERT INTO "part" VALUES('43b5d2cd4d1a4a8fb364385ee80241bc',1,'C-1','mortise-cylinder',NULL,NULL,NULL,'EA','12.1','USD',NULL,NULL,NULL,'{}','{}');
INSERT INTO "part" VALUES('f29a51c374eb4f9fb255f89556eb46cf',1,'U-1','surface-unit',NULL,NULL,NULL,'EA',NULL,NULL,NULL,NULL,NULL,'{}','{}');
CREATE TABLE person (
	id TEXT NOT NULL, 
	version INTEGER DEFAULT 1 NOT NULL, 
	name TEXT NOT NULL, 
	role TEXT NOT NULL, 
	CONSTRAINT pk_person PRIMARY KEY (id), 
	CONSTRAINT uq_person_name UNIQUE (name)
);
INSERT INTO "person" VALUES('8fbbb3fe04b04db1bdad16f1432130be',1,'keeper','specifier');
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
INSERT INTO "placed_unit" VALUES('50bbb0ad73cd471cbe57695f9989b2d9',1,'babe6beef64141afb9a9ab338e772be7','babe6beef64141afb9a9ab338e772be7','active','inside','above',20.0,1100.0);
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
INSERT INTO "project" VALUES('47d341026b3c42f4b773ee31efd57968',1,'Saved yard','2026-11-30T17:20:53+00:00','mm','mm','{"time_zone":"Etc/UTC"}');
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
INSERT INTO "revision" VALUES('19b258e7732e41acbb299eb1f069cc5b',1,'A','2026-11-30T17:20:54+00:00','keeper','kept','{}','8bcbde68e6ec7336597151ebf2f135a3a6ff2f9b727794d854836b08926c2385');
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
INSERT INTO "route" VALUES('84e25127066a495facb514cda68c63a8',1,'babe6beef64141afb9a9ab338e772be7','5527214b24a043219566d85b08f669af',6.0,1);
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
INSERT INTO "run" VALUES('32f996d378534906853aae47dd2150b8',1,'63c526baa5564461a07cb18c4e70c97c',NULL,'supply','J1',NULL,NULL,NULL,NULL,NULL,NULL);
INSERT INTO "run" VALUES('cdedda1b05264553a394105888a70953',1,'63c526baa5564461a07cb18c4e70c97c','babe6beef64141afb9a9ab338e772be7','J1','babe6beef64141afb9a9ab338e772be7',4.0,NULL,'18 AWG','solid',NULL,NULL);
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
INSERT INTO "set_line" VALUES('a927e89edf854d59baef515ba520374b',1,'eae97ea7cf044d958cbd519a53a55f72','unit','U-1',1.0);
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
INSERT INTO "supply" VALUES('5527214b24a043219566d85b08f669af',1,NULL,'Closet',NULL,2.5,NULL,NULL,NULL,'laid',NULL,NULL,NULL,NULL,NULL,NULL);
CREATE TABLE table_digest (
	name TEXT NOT NULL, 
	digest TEXT NOT NULL, 
	rows INTEGER NOT NULL, 
	change_set INTEGER NOT NULL, 
	CONSTRAINT pk_table_digest PRIMARY KEY (name)
);
INSERT INTO "table_digest" VALUES('project','658c98cc8164b390',1,0);
INSERT INTO "table_digest" VALUES('part','1ca2da02ff92888e',2,1);
INSERT INTO "table_digest" VALUES('kit_content','464edcd5bb5cbfde',1,1);
INSERT INTO "table_digest" VALUES('building','baaa9e18ceabc5b1',1,19);
INSERT INTO "table_digest" VALUES('level','9f6276874971ac81',2,20);
INSERT INTO "table_digest" VALUES('opening','e519e14b15989a4f',3,31);
INSERT INTO "table_digest" VALUES('leaf','b5fcbfcc0aae0ffe',4,14);
INSERT INTO "table_digest" VALUES('lock_point','f6015b025f12025e',3,14);
INSERT INTO "table_digest" VALUES('existing_item','fd376f50a50bb727',1,8);
INSERT INTO "table_digest" VALUES('chosen_part','f62c9a7c16b4471b',1,5);
INSERT INTO "table_digest" VALUES('placed_unit','feff1e48685ada61',1,6);
INSERT INTO "table_digest" VALUES('own_field','734f70eb15a0147f',1,7);
INSERT INTO "table_digest" VALUES('import_mapping','e0a1a3c90495c6ea',1,9);
INSERT INTO "table_digest" VALUES('opening_fit','0bbcaf0abefdf34f',2,24);
INSERT INTO "table_digest" VALUES('supply','d7e77eac28f207e5',1,11);
INSERT INTO "table_digest" VALUES('circuit','624eb7ed56cccb2e',1,11);
INSERT INTO "table_digest" VALUES('run','a9c383ee2c8605ba',2,11);
INSERT INTO "table_digest" VALUES('route','f758beae4bb82457',1,11);
INSERT INTO "table_digest" VALUES('hardware_set','89abf3bd5af2fd97',1,12);
INSERT INTO "table_digest" VALUES('set_line','4ca251b934a5909e',1,12);
INSERT INTO "table_digest" VALUES('waiver','541f7474fdcfcc84',1,12);
INSERT INTO "table_digest" VALUES('issued_packet','dff92e281aeb7596',1,12);
INSERT INTO "table_digest" VALUES('assigned_part','aa5828aeb0ff4ba1',1,13);
INSERT INTO "table_digest" VALUES('delivery','33805a10f87446e2',1,16);
INSERT INTO "table_digest" VALUES('open_question','dc5c276736b1d9ce',1,16);
INSERT INTO "table_digest" VALUES('transmittal','550b21b54e077634',1,17);
INSERT INTO "table_digest" VALUES('office','aa84d875373dfd96',1,18);
INSERT INTO "table_digest" VALUES('person','d1ceab4786ace955',1,22);
INSERT INTO "table_digest" VALUES('attachment','3c086b80347902d7',1,23);
INSERT INTO "table_digest" VALUES('revision','34581c801798af4d',1,25);
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
INSERT INTO "transmittal" VALUES('40a1130b02234660a2185ea643f89aec',1,1,'2026-01-02','keeper','Architect','for approval',NULL,'{"schedule.pdf":{"hash":"c7833160c63da29c02cf51b6bb898cf53137ae144cebfe2d8ecece1de0d67699","revision":"","size":14}}');
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
INSERT INTO "waiver" VALUES('f1dcbda08b744b36b21812479550490b',1,'babe6beef64141afb9a9ab338e772be7','hand-known','','opening','f','keeper','seen','2026-01-02',NULL);
CREATE INDEX ix_change_set_who_number ON change_set (who, number);
CREATE INDEX ix_change_set_target ON change_set (target);
CREATE INDEX ix_level_building_id ON level (building_id);
CREATE INDEX ix_change_target_target_change_set ON change_target (target, change_set);
CREATE INDEX ix_change_entry_opening_id_change_set ON change_entry (opening_id, change_set);
CREATE INDEX ix_change_entry_row_id_change_set ON change_entry (row_id, change_set);
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
CREATE INDEX ix_run_circuit_id ON run (circuit_id);
CREATE INDEX ix_run_opening_id ON run (opening_id);
CREATE INDEX ix_chosen_part_opening_id ON chosen_part (opening_id);
CREATE INDEX ix_placed_unit_opening_id ON placed_unit (opening_id);
CREATE INDEX ix_assigned_part_lock_point_id ON assigned_part (lock_point_id);
CREATE INDEX ix_assigned_part_opening_id ON assigned_part (opening_id);
CREATE INDEX ix_opening_fit_opening_id ON opening_fit (opening_id);
COMMIT;
