BEGIN TRANSACTION;
CREATE TABLE alembic_version (version_num VARCHAR(32) NOT NULL, CONSTRAINT alembic_version_pkc PRIMARY KEY (version_num));
INSERT INTO "alembic_version" VALUES('0006');
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
INSERT INTO "assigned_part" VALUES('90769848729445fd82a0c91150717b3f',1,'0d712a4bb2b54d1589dc95e7326a9ee0','0d712a4bb2b54d1589dc95e7326a9ee0','cylinder','C-1',1,1.0,'by-hand','SN-1',NULL,'planned');
CREATE TABLE building (
	id TEXT NOT NULL, 
	version INTEGER DEFAULT 1 NOT NULL, 
	name TEXT NOT NULL, 
	CONSTRAINT pk_building PRIMARY KEY (id), 
	CONSTRAINT uq_building_name UNIQUE (name)
);
INSERT INTO "building" VALUES('ff526f29030d49638fac7c027a475e34',1,'Mill');
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
INSERT INTO "change_entry" VALUES(1,0,'part','82f28d561663496a9386b279f9fd6024',NULL,'insert',NULL,'{"currency":"USD","id":"82f28d561663496a9386b279f9fd6024","kind":"mortise-cylinder","list_price":"12.1","number":"C-1","unit":"EA","version":1}','test');
INSERT INTO "change_entry" VALUES(1,1,'part','a16f86b564f44238914f0d7d71e302b3',NULL,'insert',NULL,'{"id":"a16f86b564f44238914f0d7d71e302b3","kind":"surface-unit","number":"U-1","unit":"EA","version":1}','test');
INSERT INTO "change_entry" VALUES(1,2,'kit_content','b834be731df24e8dab51abf2d0836a5e',NULL,'insert',NULL,'{"id":"b834be731df24e8dab51abf2d0836a5e","number":"S-1","part_id":"82f28d561663496a9386b279f9fd6024","quantity":2.0,"version":1}','test');
INSERT INTO "change_entry" VALUES(2,0,'building','ff526f29030d49638fac7c027a475e34',NULL,'insert',NULL,'{"id":"ff526f29030d49638fac7c027a475e34","name":"Mill","version":1}',NULL);
INSERT INTO "change_entry" VALUES(2,1,'level','a3d9312869b6474b8583ea4db137f270',NULL,'insert',NULL,'{"building_id":"ff526f29030d49638fac7c027a475e34","id":"a3d9312869b6474b8583ea4db137f270","name":"1","sort":0,"version":1}',NULL);
INSERT INTO "change_entry" VALUES(2,2,'opening','0d712a4bb2b54d1589dc95e7326a9ee0','0d712a4bb2b54d1589dc95e7326a9ee0','insert',NULL,'{"id":"0d712a4bb2b54d1589dc95e7326a9ee0","level_id":"a3d9312869b6474b8583ea4db137f270","mark":"0012","stair":true,"version":1}','added by keeper');
INSERT INTO "change_entry" VALUES(2,3,'leaf','36e5bbcb1992420fb10a9185157b77e3','0d712a4bb2b54d1589dc95e7326a9ee0','insert',NULL,'{"id":"36e5bbcb1992420fb10a9185157b77e3","opening_id":"0d712a4bb2b54d1589dc95e7326a9ee0","ordinal":0,"position":"active","version":1}','added by keeper');
INSERT INTO "change_entry" VALUES(2,4,'leaf','43d16bc136794ba8a2c56c768527d853','0d712a4bb2b54d1589dc95e7326a9ee0','insert',NULL,'{"id":"43d16bc136794ba8a2c56c768527d853","opening_id":"0d712a4bb2b54d1589dc95e7326a9ee0","ordinal":1,"position":"inactive","version":1}','added by keeper');
INSERT INTO "change_entry" VALUES(2,5,'lock_point','0d712a4bb2b54d1589dc95e7326a9ee0','0d712a4bb2b54d1589dc95e7326a9ee0','insert',NULL,'{"id":"0d712a4bb2b54d1589dc95e7326a9ee0","opening_id":"0d712a4bb2b54d1589dc95e7326a9ee0","version":1}',NULL);
INSERT INTO "change_entry" VALUES(3,0,'level','ff91a5097e7a4c53ab8a6ec063d3dfde',NULL,'insert',NULL,'{"id":"ff91a5097e7a4c53ab8a6ec063d3dfde","name":"roof","sort":1,"version":1}',NULL);
INSERT INTO "change_entry" VALUES(3,1,'opening','36a22cc461d64a4fae4fb6bad3d92d41','36a22cc461d64a4fae4fb6bad3d92d41','insert',NULL,'{"id":"36a22cc461d64a4fae4fb6bad3d92d41","level_id":"ff91a5097e7a4c53ab8a6ec063d3dfde","mark":"9E4","version":1}','added by keeper');
INSERT INTO "change_entry" VALUES(3,2,'leaf','4423cc65b56241bba5b9fb069291e379','36a22cc461d64a4fae4fb6bad3d92d41','insert',NULL,'{"id":"4423cc65b56241bba5b9fb069291e379","opening_id":"36a22cc461d64a4fae4fb6bad3d92d41","ordinal":0,"position":"single","version":1}','added by keeper');
INSERT INTO "change_entry" VALUES(3,3,'lock_point','36a22cc461d64a4fae4fb6bad3d92d41','36a22cc461d64a4fae4fb6bad3d92d41','insert',NULL,'{"id":"36a22cc461d64a4fae4fb6bad3d92d41","opening_id":"36a22cc461d64a4fae4fb6bad3d92d41","version":1}',NULL);
INSERT INTO "change_entry" VALUES(4,0,'existing_item','b3eeba4542fe49d28ecf23e15d1a2a58','0d712a4bb2b54d1589dc95e7326a9ee0','insert',NULL,'{"backset_mm":69.85,"id":"b3eeba4542fe49d28ecf23e15d1a2a58","kind":"lock","opening_id":"0d712a4bb2b54d1589dc95e7326a9ee0","ordinal":0,"version":1}','added by keeper');
INSERT INTO "change_entry" VALUES(4,1,'lock_point','0d712a4bb2b54d1589dc95e7326a9ee0','0d712a4bb2b54d1589dc95e7326a9ee0','update','{"item_id":null}','{"item_id":"b3eeba4542fe49d28ecf23e15d1a2a58"}',NULL);
INSERT INTO "change_entry" VALUES(5,0,'chosen_part','ab1d9c9714534df2a4d9c4506bf7fcc7','0d712a4bb2b54d1589dc95e7326a9ee0','insert',NULL,'{"id":"ab1d9c9714534df2a4d9c4506bf7fcc7","lock_point_id":"0d712a4bb2b54d1589dc95e7326a9ee0","opening_id":"0d712a4bb2b54d1589dc95e7326a9ee0","part":"C-1","quantity":1.0,"role":"cylinder","version":1}',NULL);
INSERT INTO "change_entry" VALUES(6,0,'placed_unit','1ad100e1f7b1402087e95f0ec6e33f49','0d712a4bb2b54d1589dc95e7326a9ee0','insert',NULL,'{"face":"secured","id":"1ad100e1f7b1402087e95f0ec6e33f49","leaf":"active","lock_point_id":"0d712a4bb2b54d1589dc95e7326a9ee0","opening_id":"0d712a4bb2b54d1589dc95e7326a9ee0","pattern":"above","version":1,"x_mm":20.0,"y_mm":1100.0}',NULL);
INSERT INTO "change_entry" VALUES(7,0,'own_field','4891a4b8ef5948b6868a1432161f0cdc',NULL,'insert',NULL,'{"choices":["AA","BB"],"entity":"existing_item","id":"4891a4b8ef5948b6868a1432161f0cdc","kind":"choice","label":"Key group","name":"key_group","unit":"","version":1}',NULL);
INSERT INTO "change_entry" VALUES(8,0,'existing_item','b3eeba4542fe49d28ecf23e15d1a2a58','0d712a4bb2b54d1589dc95e7326a9ee0','update','{"extra":{}}','{"extra":{"key_group":"AA"}}','edited by keeper');
INSERT INTO "change_entry" VALUES(9,0,'import_mapping','8776f6e1bfc7444dbd8dbf73bb69a042',NULL,'insert',NULL,'{"fingerprint":"f","id":"8776f6e1bfc7444dbd8dbf73bb69a042","mapping":{"Mark":"opening.mark"},"name":"Doors","version":1}',NULL);
INSERT INTO "change_entry" VALUES(10,0,'opening_fit','0d712a4bb2b54d1589dc95e7326a9ee0','0d712a4bb2b54d1589dc95e7326a9ee0','insert',NULL,'{"case_key":"case","fit_key":"a8e0ba654ce651dc312b81ee49fe54ecc3d8f326dcb8086581341823c2ed4139","id":"0d712a4bb2b54d1589dc95e7326a9ee0","opening_id":"0d712a4bb2b54d1589dc95e7326a9ee0","version":1}',NULL);
INSERT INTO "change_entry" VALUES(11,0,'supply','63dddcab2c6b45f8b8a7d4f831c59730',NULL,'insert',NULL,'{"id":"63dddcab2c6b45f8b8a7d4f831c59730","name":"Closet","use":"laid","version":1,"x_m":2.5}',NULL);
INSERT INTO "change_entry" VALUES(11,1,'circuit','5a0cc02fb2084c2cb5353b167ce800ec',NULL,'insert',NULL,'{"alarm":"drops","id":"5a0cc02fb2084c2cb5353b167ce800ec","name":"A","supply_id":"63dddcab2c6b45f8b8a7d4f831c59730","version":1}',NULL);
INSERT INTO "change_entry" VALUES(11,2,'run','aabd458865f541b09ab6fe06033db835',NULL,'insert',NULL,'{"circuit_id":"5a0cc02fb2084c2cb5353b167ce800ec","from_node":"supply","id":"aabd458865f541b09ab6fe06033db835","to_node":"J1","version":1}',NULL);
INSERT INTO "change_entry" VALUES(11,3,'run','b28359df296b40a2b3521add1e6470ff','0d712a4bb2b54d1589dc95e7326a9ee0','insert',NULL,'{"circuit_id":"5a0cc02fb2084c2cb5353b167ce800ec","from_node":"J1","gauge":"18 AWG","id":"b28359df296b40a2b3521add1e6470ff","length_m":4.0,"opening_id":"0d712a4bb2b54d1589dc95e7326a9ee0","stranding":"solid","to_node":"0d712a4bb2b54d1589dc95e7326a9ee0","version":1}',NULL);
INSERT INTO "change_entry" VALUES(11,4,'route','8644090c109e4cfd82cd98d46b5bf149','0d712a4bb2b54d1589dc95e7326a9ee0','insert',NULL,'{"id":"8644090c109e4cfd82cd98d46b5bf149","length_m":6.0,"opening_id":"0d712a4bb2b54d1589dc95e7326a9ee0","pinned":true,"supply_id":"63dddcab2c6b45f8b8a7d4f831c59730","version":1}',NULL);
INSERT INTO "change_entry" VALUES(12,0,'hardware_set','3cd3814e3adc4fe4a7240ff7579c3b78',NULL,'insert',NULL,'{"id":"3cd3814e3adc4fe4a7240ff7579c3b78","name":"HS-1","version":1}',NULL);
INSERT INTO "change_entry" VALUES(12,1,'set_line','42c0a169c29d4a499b2fac2c0711f27a',NULL,'insert',NULL,'{"id":"42c0a169c29d4a499b2fac2c0711f27a","part":"U-1","quantity":1.0,"role":"unit","set_id":"3cd3814e3adc4fe4a7240ff7579c3b78","version":1}',NULL);
INSERT INTO "change_entry" VALUES(12,2,'opening','0d712a4bb2b54d1589dc95e7326a9ee0','0d712a4bb2b54d1589dc95e7326a9ee0','update','{"set_id":null}','{"set_id":"3cd3814e3adc4fe4a7240ff7579c3b78"}',NULL);
INSERT INTO "change_entry" VALUES(12,3,'waiver','4f35e65fb5bf4b7c81c600012940ac69','0d712a4bb2b54d1589dc95e7326a9ee0','insert',NULL,'{"about":"","facts":"f","given_on":"2026-01-02","id":"4f35e65fb5bf4b7c81c600012940ac69","opening_id":"0d712a4bb2b54d1589dc95e7326a9ee0","person":"keeper","reason":"seen","rule":"hand-known","scope":"opening","version":1}',NULL);
INSERT INTO "change_entry" VALUES(12,4,'issued_packet','0395038aaf2d4a938de68ebc28e2e0a3','0d712a4bb2b54d1589dc95e7326a9ee0','insert',NULL,'{"at":"2026-01-02","by":"keeper","case_key":"case","id":"0395038aaf2d4a938de68ebc28e2e0a3","opening_id":"0d712a4bb2b54d1589dc95e7326a9ee0","version":1}',NULL);
INSERT INTO "change_entry" VALUES(13,0,'assigned_part','90769848729445fd82a0c91150717b3f','0d712a4bb2b54d1589dc95e7326a9ee0','insert',NULL,'{"id":"90769848729445fd82a0c91150717b3f","lock_point_id":"0d712a4bb2b54d1589dc95e7326a9ee0","opening_id":"0d712a4bb2b54d1589dc95e7326a9ee0","part":"C-1","piece":1,"quantity":1.0,"role":"cylinder","serial":"SN-1","source":"by-hand","state":"planned","version":1}',NULL);
INSERT INTO "change_entry" VALUES(14,0,'opening','0d712a4bb2b54d1589dc95e7326a9ee0','0d712a4bb2b54d1589dc95e7326a9ee0','update','{"hand":null}','{"hand":"LHR"}','edited by keeper');
INSERT INTO "change_entry" VALUES(15,0,'opening','0d712a4bb2b54d1589dc95e7326a9ee0','0d712a4bb2b54d1589dc95e7326a9ee0','update','{"hand":"LHR"}','{"hand":"RH"}','edited by keeper');
INSERT INTO "change_entry" VALUES(16,0,'opening','0d712a4bb2b54d1589dc95e7326a9ee0','0d712a4bb2b54d1589dc95e7326a9ee0','update','{"hand":"RH"}','{"hand":"LHR"}',NULL);
CREATE TABLE change_set (
	number INTEGER NOT NULL, 
	at TEXT NOT NULL, 
	who TEXT NOT NULL, 
	verb TEXT NOT NULL, 
	summary TEXT NOT NULL, 
	kind TEXT NOT NULL, 
	target INTEGER, 
	entries INTEGER NOT NULL, 
	CONSTRAINT pk_change_set PRIMARY KEY (number), 
	CONSTRAINT fk_change_set_target FOREIGN KEY(target) REFERENCES change_set (number)
);
INSERT INTO "change_set" VALUES(1,'2026-11-28T07:52:29.892+00:00','keeper','import-catalogue','Catalogue','edit',NULL,3);
INSERT INTO "change_set" VALUES(2,'2026-11-28T07:52:29.959+00:00','keeper','add-opening','Add opening 0012','edit',NULL,6);
INSERT INTO "change_set" VALUES(3,'2026-11-28T07:52:30.014+00:00','keeper','add-opening','Add opening 9E4','edit',NULL,4);
INSERT INTO "change_set" VALUES(4,'2026-11-28T07:52:30.039+00:00','keeper','add-item','Add existing item lock to 0012','edit',NULL,2);
INSERT INTO "change_set" VALUES(5,'2026-11-28T07:52:30.091+00:00','keeper','choose-part','Choose C-1 as cylinder of 0012','edit',NULL,1);
INSERT INTO "change_set" VALUES(6,'2026-11-28T07:52:30.120+00:00','keeper','place-unit','Place the unit of 0012','edit',NULL,1);
INSERT INTO "change_set" VALUES(7,'2026-11-28T07:52:30.139+00:00','keeper','define-field','Define field Key group','edit',NULL,1);
INSERT INTO "change_set" VALUES(8,'2026-11-28T07:52:30.158+00:00','keeper','set-own-value','Set Key group','edit',NULL,1);
INSERT INTO "change_set" VALUES(9,'2026-11-28T07:52:30.185+00:00','keeper','import-survey','Mapping','edit',NULL,1);
INSERT INTO "change_set" VALUES(10,'2026-11-28T07:52:30.204+00:00','keeper','fit','Fit','edit',NULL,1);
INSERT INTO "change_set" VALUES(11,'2026-11-28T07:52:30.233+00:00','keeper','lay-supply','Power','edit',NULL,5);
INSERT INTO "change_set" VALUES(12,'2026-11-28T07:52:30.253+00:00','keeper','make-set','Sets, waivers, packets','edit',NULL,5);
INSERT INTO "change_set" VALUES(13,'2026-11-28T07:52:30.289+00:00','keeper','record-piece','Pieces','edit',NULL,1);
INSERT INTO "change_set" VALUES(14,'2026-11-28T07:52:30.306+00:00','keeper','edit-facts','Edit hand of 0012','edit',NULL,1);
INSERT INTO "change_set" VALUES(15,'2026-11-28T07:52:30.326+00:00','keeper','edit-facts','Edit hand of 0012','edit',NULL,1);
INSERT INTO "change_set" VALUES(16,'2026-11-28T07:52:30.350+00:00','keeper','undo','Take back step 15: Edit hand of 0012','undo',15,1);
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
INSERT INTO "chosen_part" VALUES('ab1d9c9714534df2a4d9c4506bf7fcc7',1,'0d712a4bb2b54d1589dc95e7326a9ee0','0d712a4bb2b54d1589dc95e7326a9ee0','cylinder','C-1',1.0);
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
INSERT INTO "circuit" VALUES('5a0cc02fb2084c2cb5353b167ce800ec',1,'63dddcab2c6b45f8b8a7d4f831c59730','A',NULL,NULL,NULL,NULL,'drops',NULL);
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
	trim_secured_mm FLOAT, 
	thumb_turn BOOLEAN, 
	cross_bore_mm FLOAT, 
	edge_bore_mm FLOAT, 
	cam_form TEXT, 
	"fail" TEXT, 
	item_notes TEXT, 
	extra TEXT DEFAULT '{}' NOT NULL, 
	CONSTRAINT pk_existing_item PRIMARY KEY (id), 
	CONSTRAINT fk_existing_item_opening_id FOREIGN KEY(opening_id) REFERENCES opening (id)
);
INSERT INTO "existing_item" VALUES('b3eeba4542fe49d28ecf23e15d1a2a58',2,'0d712a4bb2b54d1589dc95e7326a9ee0',0,'lock',NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,69.85,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,'{"key_group":"AA"}');
CREATE TABLE fit_content (
	"key" TEXT NOT NULL, 
	status TEXT NOT NULL, 
	content TEXT NOT NULL, 
	CONSTRAINT pk_fit_content PRIMARY KEY ("key")
);
INSERT INTO "fit_content" VALUES('a8e0ba654ce651dc312b81ee49fe54ecc3d8f326dcb8086581341823c2ed4139','unknown','{"status":"unknown"}');
CREATE TABLE hardware_set (
	id TEXT NOT NULL, 
	version INTEGER DEFAULT 1 NOT NULL, 
	name TEXT NOT NULL, 
	notes TEXT, 
	CONSTRAINT pk_hardware_set PRIMARY KEY (id), 
	CONSTRAINT uq_hardware_set_name UNIQUE (name)
);
INSERT INTO "hardware_set" VALUES('3cd3814e3adc4fe4a7240ff7579c3b78',1,'HS-1',NULL);
CREATE TABLE import_mapping (
	id TEXT NOT NULL, 
	version INTEGER DEFAULT 1 NOT NULL, 
	fingerprint TEXT NOT NULL, 
	name TEXT, 
	mapping TEXT DEFAULT '{}' NOT NULL, 
	CONSTRAINT pk_import_mapping PRIMARY KEY (id), 
	CONSTRAINT uq_import_mapping_fingerprint UNIQUE (fingerprint)
);
INSERT INTO "import_mapping" VALUES('8776f6e1bfc7444dbd8dbf73bb69a042',1,'f','Doors','{"Mark":"opening.mark"}');
CREATE TABLE issued_packet (
	id TEXT NOT NULL, 
	version INTEGER DEFAULT 1 NOT NULL, 
	opening_id TEXT NOT NULL, 
	at TEXT NOT NULL, 
	"by" TEXT NOT NULL, 
	case_key TEXT NOT NULL, 
	CONSTRAINT pk_issued_packet PRIMARY KEY (id), 
	CONSTRAINT uq_issued_packet_opening_id UNIQUE (opening_id), 
	CONSTRAINT fk_issued_packet_opening_id FOREIGN KEY(opening_id) REFERENCES opening (id)
);
INSERT INTO "issued_packet" VALUES('0395038aaf2d4a938de68ebc28e2e0a3',1,'0d712a4bb2b54d1589dc95e7326a9ee0','2026-01-02','keeper','case');
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
INSERT INTO "kit_content" VALUES('b834be731df24e8dab51abf2d0836a5e',1,'82f28d561663496a9386b279f9fd6024','S-1',2.0);
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
	CONSTRAINT pk_leaf PRIMARY KEY (id), 
	CONSTRAINT fk_leaf_opening_id FOREIGN KEY(opening_id) REFERENCES opening (id)
);
INSERT INTO "leaf" VALUES('36e5bbcb1992420fb10a9185157b77e3',1,'0d712a4bb2b54d1589dc95e7326a9ee0',0,'active',NULL,NULL,NULL,NULL,NULL,NULL,NULL);
INSERT INTO "leaf" VALUES('43d16bc136794ba8a2c56c768527d853',1,'0d712a4bb2b54d1589dc95e7326a9ee0',1,'inactive',NULL,NULL,NULL,NULL,NULL,NULL,NULL);
INSERT INTO "leaf" VALUES('4423cc65b56241bba5b9fb069291e379',1,'36a22cc461d64a4fae4fb6bad3d92d41',0,'single',NULL,NULL,NULL,NULL,NULL,NULL,NULL);
CREATE TABLE level (
	id TEXT NOT NULL, 
	version INTEGER DEFAULT 1 NOT NULL, 
	building_id TEXT, 
	name TEXT, 
	sort INTEGER DEFAULT 0 NOT NULL, 
	height_m FLOAT, 
	CONSTRAINT pk_level PRIMARY KEY (id), 
	CONSTRAINT uq_level_building_id_name UNIQUE (building_id, name), 
	CONSTRAINT fk_level_building_id FOREIGN KEY(building_id) REFERENCES building (id)
);
INSERT INTO "level" VALUES('a3d9312869b6474b8583ea4db137f270',1,'ff526f29030d49638fac7c027a475e34','1',0,NULL);
INSERT INTO "level" VALUES('ff91a5097e7a4c53ab8a6ec063d3dfde',1,NULL,'roof',1,NULL);
CREATE TABLE lock_point (
	id TEXT NOT NULL, 
	version INTEGER DEFAULT 1 NOT NULL, 
	opening_id TEXT NOT NULL, 
	item_id TEXT, 
	CONSTRAINT pk_lock_point PRIMARY KEY (id), 
	CONSTRAINT fk_lock_point_opening_id FOREIGN KEY(opening_id) REFERENCES opening (id), 
	CONSTRAINT fk_lock_point_item_id FOREIGN KEY(item_id) REFERENCES existing_item (id) DEFERRABLE INITIALLY DEFERRED
);
INSERT INTO "lock_point" VALUES('0d712a4bb2b54d1589dc95e7326a9ee0',2,'0d712a4bb2b54d1589dc95e7326a9ee0','b3eeba4542fe49d28ecf23e15d1a2a58');
INSERT INTO "lock_point" VALUES('36a22cc461d64a4fae4fb6bad3d92d41',1,'36a22cc461d64a4fae4fb6bad3d92d41',NULL);
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
	wave TEXT, 
	priority INTEGER, 
	difficulty FLOAT, 
	installed_on TEXT, 
	notes TEXT, 
	extra TEXT DEFAULT '{}' NOT NULL, 
	CONSTRAINT pk_opening PRIMARY KEY (id), 
	CONSTRAINT uq_opening_mark UNIQUE (mark), 
	CONSTRAINT fk_opening_level_id FOREIGN KEY(level_id) REFERENCES level (id), 
	CONSTRAINT fk_opening_set_id FOREIGN KEY(set_id) REFERENCES hardware_set (id)
);
INSERT INTO "opening" VALUES('0d712a4bb2b54d1589dc95e7326a9ee0',5,'a3d9312869b6474b8583ea4db137f270','3cd3814e3adc4fe4a7240ff7579c3b78','0012',NULL,NULL,NULL,'LHR',NULL,1,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,'{}');
INSERT INTO "opening" VALUES('36a22cc461d64a4fae4fb6bad3d92d41',1,'ff91a5097e7a4c53ab8a6ec063d3dfde',NULL,'9E4',NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,'{}');
CREATE TABLE opening_fit (
	id TEXT NOT NULL, 
	version INTEGER DEFAULT 1 NOT NULL, 
	opening_id TEXT NOT NULL, 
	case_key TEXT NOT NULL, 
	fit_key TEXT NOT NULL, 
	CONSTRAINT pk_opening_fit PRIMARY KEY (id), 
	CONSTRAINT fk_opening_fit_id FOREIGN KEY(id) REFERENCES lock_point (id), 
	CONSTRAINT fk_opening_fit_opening_id FOREIGN KEY(opening_id) REFERENCES opening (id), 
	CONSTRAINT fk_opening_fit_fit_key FOREIGN KEY(fit_key) REFERENCES fit_content ("key")
);
INSERT INTO "opening_fit" VALUES('0d712a4bb2b54d1589dc95e7326a9ee0',1,'0d712a4bb2b54d1589dc95e7326a9ee0','case','a8e0ba654ce651dc312b81ee49fe54ecc3d8f326dcb8086581341823c2ed4139');
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
INSERT INTO "own_field" VALUES('4891a4b8ef5948b6868a1432161f0cdc',1,'existing_item','key_group','Key group','choice','','["AA","BB"]');
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
INSERT INTO "part" VALUES('82f28d561663496a9386b279f9fd6024',1,'C-1','mortise-cylinder',NULL,NULL,NULL,'EA','12.1','USD',NULL,NULL,NULL,'{}','{}');
INSERT INTO "part" VALUES('a16f86b564f44238914f0d7d71e302b3',1,'U-1','surface-unit',NULL,NULL,NULL,'EA',NULL,NULL,NULL,NULL,NULL,'{}','{}');
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
INSERT INTO "placed_unit" VALUES('1ad100e1f7b1402087e95f0ec6e33f49',1,'0d712a4bb2b54d1589dc95e7326a9ee0','0d712a4bb2b54d1589dc95e7326a9ee0','active','secured','above',20.0,1100.0);
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
INSERT INTO "project" VALUES('650aebcf17cc49329f9e4129ac4d0550',1,'Saved yard','2026-11-28T07:52:29+00:00','mm','mm','{}');
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
INSERT INTO "route" VALUES('8644090c109e4cfd82cd98d46b5bf149',1,'0d712a4bb2b54d1589dc95e7326a9ee0','63dddcab2c6b45f8b8a7d4f831c59730',6.0,1);
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
INSERT INTO "run" VALUES('aabd458865f541b09ab6fe06033db835',1,'5a0cc02fb2084c2cb5353b167ce800ec',NULL,'supply','J1',NULL,NULL,NULL,NULL,NULL,NULL);
INSERT INTO "run" VALUES('b28359df296b40a2b3521add1e6470ff',1,'5a0cc02fb2084c2cb5353b167ce800ec','0d712a4bb2b54d1589dc95e7326a9ee0','J1','0d712a4bb2b54d1589dc95e7326a9ee0',4.0,NULL,'18 AWG','solid',NULL,NULL);
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
INSERT INTO "set_line" VALUES('42c0a169c29d4a499b2fac2c0711f27a',1,'3cd3814e3adc4fe4a7240ff7579c3b78','unit','U-1',1.0);
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
INSERT INTO "supply" VALUES('63dddcab2c6b45f8b8a7d4f831c59730',1,NULL,'Closet',NULL,2.5,NULL,NULL,NULL,'laid',NULL,NULL,NULL,NULL,NULL);
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
INSERT INTO "waiver" VALUES('4f35e65fb5bf4b7c81c600012940ac69',1,'0d712a4bb2b54d1589dc95e7326a9ee0','hand-known','','opening','f','keeper','seen','2026-01-02',NULL);
CREATE INDEX ix_level_building_id ON level (building_id);
CREATE INDEX ix_change_entry_opening_id ON change_entry (opening_id);
CREATE INDEX ix_change_entry_row_id ON change_entry (row_id);
CREATE INDEX ix_opening_level_id ON opening (level_id);
CREATE INDEX ix_opening_set_id ON opening (set_id);
CREATE INDEX ix_supply_level_id ON supply (level_id);
CREATE INDEX ix_leaf_opening_id ON leaf (opening_id);
CREATE INDEX ix_existing_item_opening_id ON existing_item (opening_id);
CREATE INDEX ix_waiver_opening_id ON waiver (opening_id);
CREATE INDEX ix_lock_point_item_id ON lock_point (item_id);
CREATE INDEX ix_lock_point_opening_id ON lock_point (opening_id);
CREATE INDEX ix_run_opening_id ON run (opening_id);
CREATE INDEX ix_run_circuit_id ON run (circuit_id);
CREATE INDEX ix_chosen_part_opening_id ON chosen_part (opening_id);
CREATE INDEX ix_placed_unit_opening_id ON placed_unit (opening_id);
CREATE INDEX ix_assigned_part_lock_point_id ON assigned_part (lock_point_id);
CREATE INDEX ix_assigned_part_opening_id ON assigned_part (opening_id);
CREATE INDEX ix_opening_fit_opening_id ON opening_fit (opening_id);
COMMIT;
