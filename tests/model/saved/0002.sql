BEGIN TRANSACTION;
CREATE TABLE alembic_version (version_num VARCHAR(32) NOT NULL, CONSTRAINT alembic_version_pkc PRIMARY KEY (version_num));
INSERT INTO "alembic_version" VALUES('0002');
CREATE TABLE building (
	id TEXT NOT NULL, 
	version INTEGER DEFAULT 1 NOT NULL, 
	name TEXT NOT NULL, 
	CONSTRAINT pk_building PRIMARY KEY (id), 
	CONSTRAINT uq_building_name UNIQUE (name)
);
INSERT INTO "building" VALUES('9131afcaf486430e956e0f7c89694a82',1,'Mill');
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
INSERT INTO "change_entry" VALUES(1,0,'part','f4bd50d7a0424557a41842d2aa23c0fa',NULL,'insert',NULL,'{"id":"f4bd50d7a0424557a41842d2aa23c0fa","kind":"mortise-cylinder","number":"C-1","unit":"EA","version":1}','test');
INSERT INTO "change_entry" VALUES(1,1,'part','7f1828e550954b8593652688a2e05014',NULL,'insert',NULL,'{"id":"7f1828e550954b8593652688a2e05014","kind":"surface-unit","number":"U-1","unit":"EA","version":1}','test');
INSERT INTO "change_entry" VALUES(1,2,'kit_content','6819a24591d54bea9da4ca8946264ad9',NULL,'insert',NULL,'{"id":"6819a24591d54bea9da4ca8946264ad9","number":"S-1","part_id":"f4bd50d7a0424557a41842d2aa23c0fa","quantity":2.0,"version":1}','test');
INSERT INTO "change_entry" VALUES(2,0,'building','9131afcaf486430e956e0f7c89694a82',NULL,'insert',NULL,'{"id":"9131afcaf486430e956e0f7c89694a82","name":"Mill","version":1}',NULL);
INSERT INTO "change_entry" VALUES(2,1,'level','fc378a2e8f2c4f679a09ae60c614b6b1',NULL,'insert',NULL,'{"building_id":"9131afcaf486430e956e0f7c89694a82","id":"fc378a2e8f2c4f679a09ae60c614b6b1","name":"1","sort":0,"version":1}',NULL);
INSERT INTO "change_entry" VALUES(2,2,'opening','fd8058a58b164d80b7b2f195a68f0224','fd8058a58b164d80b7b2f195a68f0224','insert',NULL,'{"id":"fd8058a58b164d80b7b2f195a68f0224","level_id":"fc378a2e8f2c4f679a09ae60c614b6b1","mark":"0012","stair":true,"version":1}','added by keeper');
INSERT INTO "change_entry" VALUES(2,3,'leaf','ede3eed2942b45e497a21c38b3d852b6','fd8058a58b164d80b7b2f195a68f0224','insert',NULL,'{"id":"ede3eed2942b45e497a21c38b3d852b6","opening_id":"fd8058a58b164d80b7b2f195a68f0224","ordinal":0,"position":"active","version":1}','added by keeper');
INSERT INTO "change_entry" VALUES(2,4,'leaf','c223321f6acc4578a69379760a098a06','fd8058a58b164d80b7b2f195a68f0224','insert',NULL,'{"id":"c223321f6acc4578a69379760a098a06","opening_id":"fd8058a58b164d80b7b2f195a68f0224","ordinal":1,"position":"inactive","version":1}','added by keeper');
INSERT INTO "change_entry" VALUES(3,0,'level','d4da82cafef145079932fa1d305a7910',NULL,'insert',NULL,'{"id":"d4da82cafef145079932fa1d305a7910","name":"roof","sort":1,"version":1}',NULL);
INSERT INTO "change_entry" VALUES(3,1,'opening','5b6de34f163f48ccb3c2faa63d29035b','5b6de34f163f48ccb3c2faa63d29035b','insert',NULL,'{"id":"5b6de34f163f48ccb3c2faa63d29035b","level_id":"d4da82cafef145079932fa1d305a7910","mark":"9E4","version":1}','added by keeper');
INSERT INTO "change_entry" VALUES(3,2,'leaf','541096f08c7146639e01b6962ffbb565','5b6de34f163f48ccb3c2faa63d29035b','insert',NULL,'{"id":"541096f08c7146639e01b6962ffbb565","opening_id":"5b6de34f163f48ccb3c2faa63d29035b","ordinal":0,"position":"single","version":1}','added by keeper');
INSERT INTO "change_entry" VALUES(4,0,'existing_item','65a2475fb1544a3e8e166cfc64cd16e3','fd8058a58b164d80b7b2f195a68f0224','insert',NULL,'{"backset_mm":69.85,"id":"65a2475fb1544a3e8e166cfc64cd16e3","kind":"lock","opening_id":"fd8058a58b164d80b7b2f195a68f0224","ordinal":0,"version":1}','added by keeper');
INSERT INTO "change_entry" VALUES(5,0,'chosen_part','c5829b28f213440689e4e4f58c18874e','fd8058a58b164d80b7b2f195a68f0224','insert',NULL,'{"id":"c5829b28f213440689e4e4f58c18874e","opening_id":"fd8058a58b164d80b7b2f195a68f0224","part":"C-1","quantity":1.0,"role":"cylinder","version":1}',NULL);
INSERT INTO "change_entry" VALUES(6,0,'placed_unit','4d7d3eb49a1b4cd1b576d74bbea174a6','fd8058a58b164d80b7b2f195a68f0224','insert',NULL,'{"face":"secured","id":"4d7d3eb49a1b4cd1b576d74bbea174a6","leaf":"active","opening_id":"fd8058a58b164d80b7b2f195a68f0224","pattern":"above","version":1,"x_mm":20.0,"y_mm":1100.0}',NULL);
INSERT INTO "change_entry" VALUES(7,0,'own_field','28f0e14e8e3b41fb8e543135d7c1f243',NULL,'insert',NULL,'{"choices":["AA","BB"],"entity":"existing_item","id":"28f0e14e8e3b41fb8e543135d7c1f243","kind":"choice","label":"Key group","name":"key_group","unit":"","version":1}',NULL);
INSERT INTO "change_entry" VALUES(8,0,'existing_item','65a2475fb1544a3e8e166cfc64cd16e3','fd8058a58b164d80b7b2f195a68f0224','update','{"extra":{}}','{"extra":{"key_group":"AA"}}','edited by keeper');
INSERT INTO "change_entry" VALUES(9,0,'import_mapping','d80b08963dc3498d9a90fd3c59541b80',NULL,'insert',NULL,'{"fingerprint":"f","id":"d80b08963dc3498d9a90fd3c59541b80","mapping":{"Mark":"opening.mark"},"name":"Doors","version":1}',NULL);
INSERT INTO "change_entry" VALUES(10,0,'opening_fit','fd8058a58b164d80b7b2f195a68f0224','fd8058a58b164d80b7b2f195a68f0224','insert',NULL,'{"case_key":"case","fit_key":"a8e0ba654ce651dc312b81ee49fe54ecc3d8f326dcb8086581341823c2ed4139","id":"fd8058a58b164d80b7b2f195a68f0224","version":1}',NULL);
INSERT INTO "change_entry" VALUES(11,0,'supply','6925efc3180e45a88c05666abbafc759',NULL,'insert',NULL,'{"id":"6925efc3180e45a88c05666abbafc759","name":"Closet","use":"laid","version":1,"x_m":2.5}',NULL);
INSERT INTO "change_entry" VALUES(11,1,'circuit','bb39b58633b84a50ac961040aa1b42c3',NULL,'insert',NULL,'{"alarm":"drops","id":"bb39b58633b84a50ac961040aa1b42c3","name":"A","supply_id":"6925efc3180e45a88c05666abbafc759","version":1}',NULL);
INSERT INTO "change_entry" VALUES(11,2,'run','da13fa4e1e064462a0940c5a6d2fffd9',NULL,'insert',NULL,'{"circuit_id":"bb39b58633b84a50ac961040aa1b42c3","from_node":"supply","id":"da13fa4e1e064462a0940c5a6d2fffd9","to_node":"J1","version":1}',NULL);
INSERT INTO "change_entry" VALUES(11,3,'run','03eb42286a1e492a8e4caeb836111a3a','fd8058a58b164d80b7b2f195a68f0224','insert',NULL,'{"circuit_id":"bb39b58633b84a50ac961040aa1b42c3","from_node":"J1","gauge":"18 AWG","id":"03eb42286a1e492a8e4caeb836111a3a","length_m":4.0,"opening_id":"fd8058a58b164d80b7b2f195a68f0224","stranding":"solid","to_node":"fd8058a58b164d80b7b2f195a68f0224","version":1}',NULL);
INSERT INTO "change_entry" VALUES(11,4,'route','d5d3854a1c944344a9ad50b9f0d12f52','fd8058a58b164d80b7b2f195a68f0224','insert',NULL,'{"id":"d5d3854a1c944344a9ad50b9f0d12f52","length_m":6.0,"opening_id":"fd8058a58b164d80b7b2f195a68f0224","pinned":true,"supply_id":"6925efc3180e45a88c05666abbafc759","version":1}',NULL);
INSERT INTO "change_entry" VALUES(12,0,'hardware_set','634007d45c0540e3a15ecdbfbbdcafbf',NULL,'insert',NULL,'{"id":"634007d45c0540e3a15ecdbfbbdcafbf","name":"HS-1","version":1}',NULL);
INSERT INTO "change_entry" VALUES(12,1,'set_line','cc8d901395bf4d8bab850f9c577891fe',NULL,'insert',NULL,'{"id":"cc8d901395bf4d8bab850f9c577891fe","part":"U-1","quantity":1.0,"role":"unit","set_id":"634007d45c0540e3a15ecdbfbbdcafbf","version":1}',NULL);
INSERT INTO "change_entry" VALUES(12,2,'opening','fd8058a58b164d80b7b2f195a68f0224','fd8058a58b164d80b7b2f195a68f0224','update','{"set_id":null}','{"set_id":"634007d45c0540e3a15ecdbfbbdcafbf"}',NULL);
INSERT INTO "change_entry" VALUES(12,3,'waiver','37641fca5a524c4cbe405787d49f67ff','fd8058a58b164d80b7b2f195a68f0224','insert',NULL,'{"about":"","facts":"f","given_on":"2026-01-02","id":"37641fca5a524c4cbe405787d49f67ff","opening_id":"fd8058a58b164d80b7b2f195a68f0224","person":"keeper","reason":"seen","rule":"hand-known","scope":"opening","version":1}',NULL);
INSERT INTO "change_entry" VALUES(12,4,'issued_packet','8710ba10600e489cafbd71249df6a89d','fd8058a58b164d80b7b2f195a68f0224','insert',NULL,'{"at":"2026-01-02","by":"keeper","case_key":"case","id":"8710ba10600e489cafbd71249df6a89d","opening_id":"fd8058a58b164d80b7b2f195a68f0224","version":1}',NULL);
INSERT INTO "change_entry" VALUES(13,0,'opening','fd8058a58b164d80b7b2f195a68f0224','fd8058a58b164d80b7b2f195a68f0224','update','{"hand":null}','{"hand":"LHR"}','edited by keeper');
INSERT INTO "change_entry" VALUES(14,0,'opening','fd8058a58b164d80b7b2f195a68f0224','fd8058a58b164d80b7b2f195a68f0224','update','{"hand":"LHR"}','{"hand":"RH"}','edited by keeper');
INSERT INTO "change_entry" VALUES(15,0,'opening','fd8058a58b164d80b7b2f195a68f0224','fd8058a58b164d80b7b2f195a68f0224','update','{"hand":"RH"}','{"hand":"LHR"}',NULL);
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
INSERT INTO "change_set" VALUES(1,'2026-11-25T13:29:48.823+00:00','keeper','import-catalogue','Catalogue','edit',NULL,3);
INSERT INTO "change_set" VALUES(2,'2026-11-25T13:29:48.847+00:00','keeper','add-opening','Add opening 0012','edit',NULL,5);
INSERT INTO "change_set" VALUES(3,'2026-11-25T13:29:48.857+00:00','keeper','add-opening','Add opening 9E4','edit',NULL,3);
INSERT INTO "change_set" VALUES(4,'2026-11-25T13:29:48.865+00:00','keeper','add-item','Add existing item lock to 0012','edit',NULL,1);
INSERT INTO "change_set" VALUES(5,'2026-11-25T13:29:48.874+00:00','keeper','choose-part','Choose C-1 as cylinder of 0012','edit',NULL,1);
INSERT INTO "change_set" VALUES(6,'2026-11-25T13:29:48.881+00:00','keeper','place-unit','Place the unit of 0012','edit',NULL,1);
INSERT INTO "change_set" VALUES(7,'2026-11-25T13:29:48.883+00:00','keeper','define-field','Define field Key group','edit',NULL,1);
INSERT INTO "change_set" VALUES(8,'2026-11-25T13:29:48.891+00:00','keeper','set-own-value','Set Key group','edit',NULL,1);
INSERT INTO "change_set" VALUES(9,'2026-11-25T13:29:48.896+00:00','keeper','import-survey','Mapping','edit',NULL,1);
INSERT INTO "change_set" VALUES(10,'2026-11-25T13:29:48.904+00:00','keeper','fit','Fit','edit',NULL,1);
INSERT INTO "change_set" VALUES(11,'2026-11-25T13:29:48.906+00:00','keeper','lay-supply','Power','edit',NULL,5);
INSERT INTO "change_set" VALUES(12,'2026-11-25T13:29:48.917+00:00','keeper','make-set','Sets, waivers, packets','edit',NULL,5);
INSERT INTO "change_set" VALUES(13,'2026-11-25T13:29:48.926+00:00','keeper','edit-facts','Edit hand of 0012','edit',NULL,1);
INSERT INTO "change_set" VALUES(14,'2026-11-25T13:29:48.941+00:00','keeper','edit-facts','Edit hand of 0012','edit',NULL,1);
INSERT INTO "change_set" VALUES(15,'2026-11-25T13:29:48.955+00:00','keeper','undo','Take back step 14: Edit hand of 0012','undo',14,1);
CREATE TABLE chosen_part (
	id TEXT NOT NULL, 
	version INTEGER DEFAULT 1 NOT NULL, 
	opening_id TEXT NOT NULL, 
	role TEXT NOT NULL, 
	part TEXT NOT NULL, 
	quantity FLOAT NOT NULL, 
	CONSTRAINT pk_chosen_part PRIMARY KEY (id), 
	CONSTRAINT uq_chosen_part_opening_id_role_part UNIQUE (opening_id, role, part), 
	CONSTRAINT fk_chosen_part_opening_id FOREIGN KEY(opening_id) REFERENCES opening (id)
);
INSERT INTO "chosen_part" VALUES('c5829b28f213440689e4e4f58c18874e',1,'fd8058a58b164d80b7b2f195a68f0224','cylinder','C-1',1.0);
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
INSERT INTO "circuit" VALUES('bb39b58633b84a50ac961040aa1b42c3',1,'6925efc3180e45a88c05666abbafc759','A',NULL,NULL,NULL,NULL,'drops',NULL);
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
INSERT INTO "existing_item" VALUES('65a2475fb1544a3e8e166cfc64cd16e3',2,'fd8058a58b164d80b7b2f195a68f0224',0,'lock',NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,69.85,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,'{"key_group":"AA"}');
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
INSERT INTO "hardware_set" VALUES('634007d45c0540e3a15ecdbfbbdcafbf',1,'HS-1',NULL);
CREATE TABLE import_mapping (
	id TEXT NOT NULL, 
	version INTEGER DEFAULT 1 NOT NULL, 
	fingerprint TEXT NOT NULL, 
	name TEXT, 
	mapping TEXT DEFAULT '{}' NOT NULL, 
	CONSTRAINT pk_import_mapping PRIMARY KEY (id), 
	CONSTRAINT uq_import_mapping_fingerprint UNIQUE (fingerprint)
);
INSERT INTO "import_mapping" VALUES('d80b08963dc3498d9a90fd3c59541b80',1,'f','Doors','{"Mark":"opening.mark"}');
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
INSERT INTO "issued_packet" VALUES('8710ba10600e489cafbd71249df6a89d',1,'fd8058a58b164d80b7b2f195a68f0224','2026-01-02','keeper','case');
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
INSERT INTO "kit_content" VALUES('6819a24591d54bea9da4ca8946264ad9',1,'f4bd50d7a0424557a41842d2aa23c0fa','S-1',2.0);
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
INSERT INTO "leaf" VALUES('ede3eed2942b45e497a21c38b3d852b6',1,'fd8058a58b164d80b7b2f195a68f0224',0,'active',NULL,NULL,NULL,NULL,NULL,NULL,NULL);
INSERT INTO "leaf" VALUES('c223321f6acc4578a69379760a098a06',1,'fd8058a58b164d80b7b2f195a68f0224',1,'inactive',NULL,NULL,NULL,NULL,NULL,NULL,NULL);
INSERT INTO "leaf" VALUES('541096f08c7146639e01b6962ffbb565',1,'5b6de34f163f48ccb3c2faa63d29035b',0,'single',NULL,NULL,NULL,NULL,NULL,NULL,NULL);
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
INSERT INTO "level" VALUES('fc378a2e8f2c4f679a09ae60c614b6b1',1,'9131afcaf486430e956e0f7c89694a82','1',0,NULL);
INSERT INTO "level" VALUES('d4da82cafef145079932fa1d305a7910',1,NULL,'roof',1,NULL);
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
INSERT INTO "opening" VALUES('fd8058a58b164d80b7b2f195a68f0224',5,'fc378a2e8f2c4f679a09ae60c614b6b1','634007d45c0540e3a15ecdbfbbdcafbf','0012',NULL,NULL,NULL,'LHR',NULL,1,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,'{}');
INSERT INTO "opening" VALUES('5b6de34f163f48ccb3c2faa63d29035b',1,'d4da82cafef145079932fa1d305a7910',NULL,'9E4',NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,'{}');
CREATE TABLE opening_fit (
	id TEXT NOT NULL, 
	version INTEGER DEFAULT 1 NOT NULL, 
	case_key TEXT NOT NULL, 
	fit_key TEXT NOT NULL, 
	CONSTRAINT pk_opening_fit PRIMARY KEY (id), 
	CONSTRAINT fk_opening_fit_id FOREIGN KEY(id) REFERENCES opening (id), 
	CONSTRAINT fk_opening_fit_fit_key FOREIGN KEY(fit_key) REFERENCES fit_content ("key")
);
INSERT INTO "opening_fit" VALUES('fd8058a58b164d80b7b2f195a68f0224',1,'case','a8e0ba654ce651dc312b81ee49fe54ecc3d8f326dcb8086581341823c2ed4139');
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
INSERT INTO "own_field" VALUES('28f0e14e8e3b41fb8e543135d7c1f243',1,'existing_item','key_group','Key group','choice','','["AA","BB"]');
CREATE TABLE part (
	id TEXT NOT NULL, 
	version INTEGER DEFAULT 1 NOT NULL, 
	number TEXT NOT NULL, 
	kind TEXT NOT NULL, 
	description TEXT, 
	supplier TEXT, 
	finish TEXT, 
	unit TEXT, 
	list_price FLOAT, 
	currency TEXT, 
	superseded_by TEXT, 
	stock FLOAT, 
	preferred INTEGER, 
	attributes TEXT DEFAULT '{}' NOT NULL, 
	extra TEXT DEFAULT '{}' NOT NULL, 
	CONSTRAINT pk_part PRIMARY KEY (id), 
	CONSTRAINT uq_part_number UNIQUE (number)
);
INSERT INTO "part" VALUES('f4bd50d7a0424557a41842d2aa23c0fa',1,'C-1','mortise-cylinder',NULL,NULL,NULL,'EA',NULL,NULL,NULL,NULL,NULL,'{}','{}');
INSERT INTO "part" VALUES('7f1828e550954b8593652688a2e05014',1,'U-1','surface-unit',NULL,NULL,NULL,'EA',NULL,NULL,NULL,NULL,NULL,'{}','{}');
CREATE TABLE placed_unit (
	id TEXT NOT NULL, 
	version INTEGER DEFAULT 1 NOT NULL, 
	opening_id TEXT NOT NULL, 
	leaf TEXT NOT NULL, 
	face TEXT NOT NULL, 
	pattern TEXT NOT NULL, 
	x_mm FLOAT NOT NULL, 
	y_mm FLOAT NOT NULL, 
	CONSTRAINT pk_placed_unit PRIMARY KEY (id), 
	CONSTRAINT uq_placed_unit_opening_id UNIQUE (opening_id), 
	CONSTRAINT fk_placed_unit_opening_id FOREIGN KEY(opening_id) REFERENCES opening (id)
);
INSERT INTO "placed_unit" VALUES('4d7d3eb49a1b4cd1b576d74bbea174a6',1,'fd8058a58b164d80b7b2f195a68f0224','active','secured','above',20.0,1100.0);
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
INSERT INTO "project" VALUES('a632ddfbdab24ba0a0fdb2bb08d4d26b',1,'Saved yard','2026-11-25T13:29:48+00:00','mm','mm','{}');
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
INSERT INTO "route" VALUES('d5d3854a1c944344a9ad50b9f0d12f52',1,'fd8058a58b164d80b7b2f195a68f0224','6925efc3180e45a88c05666abbafc759',6.0,1);
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
INSERT INTO "run" VALUES('da13fa4e1e064462a0940c5a6d2fffd9',1,'bb39b58633b84a50ac961040aa1b42c3',NULL,'supply','J1',NULL,NULL,NULL,NULL,NULL,NULL);
INSERT INTO "run" VALUES('03eb42286a1e492a8e4caeb836111a3a',1,'bb39b58633b84a50ac961040aa1b42c3','fd8058a58b164d80b7b2f195a68f0224','J1','fd8058a58b164d80b7b2f195a68f0224',4.0,NULL,'18 AWG','solid',NULL,NULL);
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
INSERT INTO "set_line" VALUES('cc8d901395bf4d8bab850f9c577891fe',1,'634007d45c0540e3a15ecdbfbbdcafbf','unit','U-1',1.0);
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
INSERT INTO "supply" VALUES('6925efc3180e45a88c05666abbafc759',1,NULL,'Closet',NULL,2.5,NULL,NULL,NULL,'laid',NULL,NULL,NULL,NULL,NULL);
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
INSERT INTO "waiver" VALUES('37641fca5a524c4cbe405787d49f67ff',1,'fd8058a58b164d80b7b2f195a68f0224','hand-known','','opening','f','keeper','seen','2026-01-02',NULL);
CREATE INDEX ix_level_building_id ON level (building_id);
CREATE INDEX ix_change_entry_row_id ON change_entry (row_id);
CREATE INDEX ix_change_entry_opening_id ON change_entry (opening_id);
CREATE INDEX ix_opening_level_id ON opening (level_id);
CREATE INDEX ix_opening_set_id ON opening (set_id);
CREATE INDEX ix_supply_level_id ON supply (level_id);
CREATE INDEX ix_leaf_opening_id ON leaf (opening_id);
CREATE INDEX ix_existing_item_opening_id ON existing_item (opening_id);
CREATE INDEX ix_waiver_opening_id ON waiver (opening_id);
CREATE INDEX ix_run_circuit_id ON run (circuit_id);
CREATE INDEX ix_run_opening_id ON run (opening_id);
COMMIT;
