BEGIN TRANSACTION;
CREATE TABLE alembic_version (version_num VARCHAR(32) NOT NULL, CONSTRAINT alembic_version_pkc PRIMARY KEY (version_num));
INSERT INTO "alembic_version" VALUES('0006');
CREATE TABLE building (
	id TEXT NOT NULL, 
	version INTEGER DEFAULT 1 NOT NULL, 
	name TEXT NOT NULL, 
	CONSTRAINT pk_building PRIMARY KEY (id), 
	CONSTRAINT uq_building_name UNIQUE (name)
);
INSERT INTO "building" VALUES('831e12151dc842eda72a3bea004120ec',1,'Mill');
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
INSERT INTO "change_entry" VALUES(1,0,'part','b951ac5746b540939e8f4af786ef4f6e',NULL,'insert',NULL,'{"currency":"USD","id":"b951ac5746b540939e8f4af786ef4f6e","kind":"mortise-cylinder","list_price":"12.1","number":"C-1","unit":"EA","version":1}','test');
INSERT INTO "change_entry" VALUES(1,1,'part','50876fbc3a9b434f8d8cd7901c828d76',NULL,'insert',NULL,'{"id":"50876fbc3a9b434f8d8cd7901c828d76","kind":"surface-unit","number":"U-1","unit":"EA","version":1}','test');
INSERT INTO "change_entry" VALUES(1,2,'kit_content','a2f3678875e84875a2375677fd994420',NULL,'insert',NULL,'{"id":"a2f3678875e84875a2375677fd994420","number":"S-1","part_id":"b951ac5746b540939e8f4af786ef4f6e","quantity":2.0,"version":1}','test');
INSERT INTO "change_entry" VALUES(2,0,'building','831e12151dc842eda72a3bea004120ec',NULL,'insert',NULL,'{"id":"831e12151dc842eda72a3bea004120ec","name":"Mill","version":1}',NULL);
INSERT INTO "change_entry" VALUES(2,1,'level','fc5ef09883564fb7a6a2a328e7aab64a',NULL,'insert',NULL,'{"building_id":"831e12151dc842eda72a3bea004120ec","id":"fc5ef09883564fb7a6a2a328e7aab64a","name":"1","sort":0,"version":1}',NULL);
INSERT INTO "change_entry" VALUES(2,2,'opening','e98f271227044a5989f6aafc85082a8d','e98f271227044a5989f6aafc85082a8d','insert',NULL,'{"id":"e98f271227044a5989f6aafc85082a8d","level_id":"fc5ef09883564fb7a6a2a328e7aab64a","mark":"0012","stair":true,"version":1}','added by keeper');
INSERT INTO "change_entry" VALUES(2,3,'leaf','f59a1b96fa914cfbb2b4a8283a8c3f28','e98f271227044a5989f6aafc85082a8d','insert',NULL,'{"id":"f59a1b96fa914cfbb2b4a8283a8c3f28","opening_id":"e98f271227044a5989f6aafc85082a8d","ordinal":0,"position":"active","version":1}','added by keeper');
INSERT INTO "change_entry" VALUES(2,4,'leaf','7d2f6ff9ed254da2835cc954eb498bfb','e98f271227044a5989f6aafc85082a8d','insert',NULL,'{"id":"7d2f6ff9ed254da2835cc954eb498bfb","opening_id":"e98f271227044a5989f6aafc85082a8d","ordinal":1,"position":"inactive","version":1}','added by keeper');
INSERT INTO "change_entry" VALUES(3,0,'level','e4bffd201c2840c282db9870ad16c1c9',NULL,'insert',NULL,'{"id":"e4bffd201c2840c282db9870ad16c1c9","name":"roof","sort":1,"version":1}',NULL);
INSERT INTO "change_entry" VALUES(3,1,'opening','fc71b0ec5f584301ad07397f81171543','fc71b0ec5f584301ad07397f81171543','insert',NULL,'{"id":"fc71b0ec5f584301ad07397f81171543","level_id":"e4bffd201c2840c282db9870ad16c1c9","mark":"9E4","version":1}','added by keeper');
INSERT INTO "change_entry" VALUES(3,2,'leaf','7beb5574f3af45959a8dc53979ec544f','fc71b0ec5f584301ad07397f81171543','insert',NULL,'{"id":"7beb5574f3af45959a8dc53979ec544f","opening_id":"fc71b0ec5f584301ad07397f81171543","ordinal":0,"position":"single","version":1}','added by keeper');
INSERT INTO "change_entry" VALUES(4,0,'existing_item','bac09cc4f64f4205b4923e114e6aa6c9','e98f271227044a5989f6aafc85082a8d','insert',NULL,'{"backset_mm":69.85,"id":"bac09cc4f64f4205b4923e114e6aa6c9","kind":"lock","opening_id":"e98f271227044a5989f6aafc85082a8d","ordinal":0,"version":1}','added by keeper');
INSERT INTO "change_entry" VALUES(5,0,'chosen_part','f6e7524543d640a59002e2b0d526b59b','e98f271227044a5989f6aafc85082a8d','insert',NULL,'{"id":"f6e7524543d640a59002e2b0d526b59b","opening_id":"e98f271227044a5989f6aafc85082a8d","part":"C-1","quantity":1.0,"role":"cylinder","version":1}',NULL);
INSERT INTO "change_entry" VALUES(6,0,'placed_unit','702d64dc24cc4a4ab0e8d303fe5904dd','e98f271227044a5989f6aafc85082a8d','insert',NULL,'{"face":"secured","id":"702d64dc24cc4a4ab0e8d303fe5904dd","leaf":"active","opening_id":"e98f271227044a5989f6aafc85082a8d","pattern":"above","version":1,"x_mm":20.0,"y_mm":1100.0}',NULL);
INSERT INTO "change_entry" VALUES(7,0,'own_field','5152e8b56c764607a622dab707cd8962',NULL,'insert',NULL,'{"choices":["AA","BB"],"entity":"existing_item","id":"5152e8b56c764607a622dab707cd8962","kind":"choice","label":"Key group","name":"key_group","unit":"","version":1}',NULL);
INSERT INTO "change_entry" VALUES(8,0,'existing_item','bac09cc4f64f4205b4923e114e6aa6c9','e98f271227044a5989f6aafc85082a8d','update','{"extra":{}}','{"extra":{"key_group":"AA"}}','edited by keeper');
INSERT INTO "change_entry" VALUES(9,0,'import_mapping','263aede65f9e4096a9e61af331261c91',NULL,'insert',NULL,'{"fingerprint":"f","id":"263aede65f9e4096a9e61af331261c91","mapping":{"Mark":"opening.mark"},"name":"Doors","version":1}',NULL);
INSERT INTO "change_entry" VALUES(10,0,'opening_fit','e98f271227044a5989f6aafc85082a8d','e98f271227044a5989f6aafc85082a8d','insert',NULL,'{"case_key":"case","fit_key":"a8e0ba654ce651dc312b81ee49fe54ecc3d8f326dcb8086581341823c2ed4139","id":"e98f271227044a5989f6aafc85082a8d","version":1}',NULL);
INSERT INTO "change_entry" VALUES(11,0,'supply','74d271bd2af4430fba4037a14985194b',NULL,'insert',NULL,'{"id":"74d271bd2af4430fba4037a14985194b","name":"Closet","use":"laid","version":1,"x_m":2.5}',NULL);
INSERT INTO "change_entry" VALUES(11,1,'circuit','7de91971eb0a4a5b8d773b4efb7554f3',NULL,'insert',NULL,'{"alarm":"drops","id":"7de91971eb0a4a5b8d773b4efb7554f3","name":"A","supply_id":"74d271bd2af4430fba4037a14985194b","version":1}',NULL);
INSERT INTO "change_entry" VALUES(11,2,'run','dc386e03dcb842918e965f98b18d09a2',NULL,'insert',NULL,'{"circuit_id":"7de91971eb0a4a5b8d773b4efb7554f3","from_node":"supply","id":"dc386e03dcb842918e965f98b18d09a2","to_node":"J1","version":1}',NULL);
INSERT INTO "change_entry" VALUES(11,3,'run','6c754b67bd5f46ceabde245bb140ff13','e98f271227044a5989f6aafc85082a8d','insert',NULL,'{"circuit_id":"7de91971eb0a4a5b8d773b4efb7554f3","from_node":"J1","gauge":"18 AWG","id":"6c754b67bd5f46ceabde245bb140ff13","length_m":4.0,"opening_id":"e98f271227044a5989f6aafc85082a8d","stranding":"solid","to_node":"e98f271227044a5989f6aafc85082a8d","version":1}',NULL);
INSERT INTO "change_entry" VALUES(11,4,'route','7673cea6fd3d4c4098f909401a4b6c39','e98f271227044a5989f6aafc85082a8d','insert',NULL,'{"id":"7673cea6fd3d4c4098f909401a4b6c39","length_m":6.0,"opening_id":"e98f271227044a5989f6aafc85082a8d","pinned":true,"supply_id":"74d271bd2af4430fba4037a14985194b","version":1}',NULL);
INSERT INTO "change_entry" VALUES(12,0,'hardware_set','64b1c692573f44f79efa2d2c0ef7e106',NULL,'insert',NULL,'{"id":"64b1c692573f44f79efa2d2c0ef7e106","name":"HS-1","version":1}',NULL);
INSERT INTO "change_entry" VALUES(12,1,'set_line','86c73a94268c4993ae58a55e89abb0ec',NULL,'insert',NULL,'{"id":"86c73a94268c4993ae58a55e89abb0ec","part":"U-1","quantity":1.0,"role":"unit","set_id":"64b1c692573f44f79efa2d2c0ef7e106","version":1}',NULL);
INSERT INTO "change_entry" VALUES(12,2,'opening','e98f271227044a5989f6aafc85082a8d','e98f271227044a5989f6aafc85082a8d','update','{"set_id":null}','{"set_id":"64b1c692573f44f79efa2d2c0ef7e106"}',NULL);
INSERT INTO "change_entry" VALUES(12,3,'waiver','5cd315a9441d48c097a69b659994f834','e98f271227044a5989f6aafc85082a8d','insert',NULL,'{"about":"","facts":"f","given_on":"2026-01-02","id":"5cd315a9441d48c097a69b659994f834","opening_id":"e98f271227044a5989f6aafc85082a8d","person":"keeper","reason":"seen","rule":"hand-known","scope":"opening","version":1}',NULL);
INSERT INTO "change_entry" VALUES(12,4,'issued_packet','7bbce9de5e2549fba342b4c6d42d3173','e98f271227044a5989f6aafc85082a8d','insert',NULL,'{"at":"2026-01-02","by":"keeper","case_key":"case","id":"7bbce9de5e2549fba342b4c6d42d3173","opening_id":"e98f271227044a5989f6aafc85082a8d","version":1}',NULL);
INSERT INTO "change_entry" VALUES(13,0,'opening','e98f271227044a5989f6aafc85082a8d','e98f271227044a5989f6aafc85082a8d','update','{"hand":null}','{"hand":"LHR"}','edited by keeper');
INSERT INTO "change_entry" VALUES(14,0,'opening','e98f271227044a5989f6aafc85082a8d','e98f271227044a5989f6aafc85082a8d','update','{"hand":"LHR"}','{"hand":"RH"}','edited by keeper');
INSERT INTO "change_entry" VALUES(15,0,'opening','e98f271227044a5989f6aafc85082a8d','e98f271227044a5989f6aafc85082a8d','update','{"hand":"RH"}','{"hand":"LHR"}',NULL);
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
INSERT INTO "change_set" VALUES(1,'2026-11-28T06:57:07.720+00:00','keeper','import-catalogue','Catalogue','edit',NULL,3);
INSERT INTO "change_set" VALUES(2,'2026-11-28T06:57:07.750+00:00','keeper','add-opening','Add opening 0012','edit',NULL,5);
INSERT INTO "change_set" VALUES(3,'2026-11-28T06:57:07.764+00:00','keeper','add-opening','Add opening 9E4','edit',NULL,3);
INSERT INTO "change_set" VALUES(4,'2026-11-28T06:57:07.774+00:00','keeper','add-item','Add existing item lock to 0012','edit',NULL,1);
INSERT INTO "change_set" VALUES(5,'2026-11-28T06:57:07.786+00:00','keeper','choose-part','Choose C-1 as cylinder of 0012','edit',NULL,1);
INSERT INTO "change_set" VALUES(6,'2026-11-28T06:57:07.790+00:00','keeper','place-unit','Place the unit of 0012','edit',NULL,1);
INSERT INTO "change_set" VALUES(7,'2026-11-28T06:57:07.799+00:00','keeper','define-field','Define field Key group','edit',NULL,1);
INSERT INTO "change_set" VALUES(8,'2026-11-28T06:57:07.808+00:00','keeper','set-own-value','Set Key group','edit',NULL,1);
INSERT INTO "change_set" VALUES(9,'2026-11-28T06:57:07.819+00:00','keeper','import-survey','Mapping','edit',NULL,1);
INSERT INTO "change_set" VALUES(10,'2026-11-28T06:57:07.831+00:00','keeper','fit','Fit','edit',NULL,1);
INSERT INTO "change_set" VALUES(11,'2026-11-28T06:57:07.843+00:00','keeper','lay-supply','Power','edit',NULL,5);
INSERT INTO "change_set" VALUES(12,'2026-11-28T06:57:07.861+00:00','keeper','make-set','Sets, waivers, packets','edit',NULL,5);
INSERT INTO "change_set" VALUES(13,'2026-11-28T06:57:07.883+00:00','keeper','edit-facts','Edit hand of 0012','edit',NULL,1);
INSERT INTO "change_set" VALUES(14,'2026-11-28T06:57:07.899+00:00','keeper','edit-facts','Edit hand of 0012','edit',NULL,1);
INSERT INTO "change_set" VALUES(15,'2026-11-28T06:57:07.911+00:00','keeper','undo','Take back step 14: Edit hand of 0012','undo',14,1);
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
INSERT INTO "chosen_part" VALUES('f6e7524543d640a59002e2b0d526b59b',1,'e98f271227044a5989f6aafc85082a8d','cylinder','C-1',1.0);
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
INSERT INTO "circuit" VALUES('7de91971eb0a4a5b8d773b4efb7554f3',1,'74d271bd2af4430fba4037a14985194b','A',NULL,NULL,NULL,NULL,'drops',NULL);
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
INSERT INTO "existing_item" VALUES('bac09cc4f64f4205b4923e114e6aa6c9',2,'e98f271227044a5989f6aafc85082a8d',0,'lock',NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,69.85,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,'{"key_group":"AA"}');
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
INSERT INTO "hardware_set" VALUES('64b1c692573f44f79efa2d2c0ef7e106',1,'HS-1',NULL);
CREATE TABLE import_mapping (
	id TEXT NOT NULL, 
	version INTEGER DEFAULT 1 NOT NULL, 
	fingerprint TEXT NOT NULL, 
	name TEXT, 
	mapping TEXT DEFAULT '{}' NOT NULL, 
	CONSTRAINT pk_import_mapping PRIMARY KEY (id), 
	CONSTRAINT uq_import_mapping_fingerprint UNIQUE (fingerprint)
);
INSERT INTO "import_mapping" VALUES('263aede65f9e4096a9e61af331261c91',1,'f','Doors','{"Mark":"opening.mark"}');
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
INSERT INTO "issued_packet" VALUES('7bbce9de5e2549fba342b4c6d42d3173',1,'e98f271227044a5989f6aafc85082a8d','2026-01-02','keeper','case');
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
INSERT INTO "kit_content" VALUES('a2f3678875e84875a2375677fd994420',1,'b951ac5746b540939e8f4af786ef4f6e','S-1',2.0);
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
INSERT INTO "leaf" VALUES('f59a1b96fa914cfbb2b4a8283a8c3f28',1,'e98f271227044a5989f6aafc85082a8d',0,'active',NULL,NULL,NULL,NULL,NULL,NULL,NULL);
INSERT INTO "leaf" VALUES('7d2f6ff9ed254da2835cc954eb498bfb',1,'e98f271227044a5989f6aafc85082a8d',1,'inactive',NULL,NULL,NULL,NULL,NULL,NULL,NULL);
INSERT INTO "leaf" VALUES('7beb5574f3af45959a8dc53979ec544f',1,'fc71b0ec5f584301ad07397f81171543',0,'single',NULL,NULL,NULL,NULL,NULL,NULL,NULL);
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
INSERT INTO "level" VALUES('fc5ef09883564fb7a6a2a328e7aab64a',1,'831e12151dc842eda72a3bea004120ec','1',0,NULL);
INSERT INTO "level" VALUES('e4bffd201c2840c282db9870ad16c1c9',1,NULL,'roof',1,NULL);
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
INSERT INTO "opening" VALUES('e98f271227044a5989f6aafc85082a8d',5,'fc5ef09883564fb7a6a2a328e7aab64a','64b1c692573f44f79efa2d2c0ef7e106','0012',NULL,NULL,NULL,'LHR',NULL,1,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,'{}');
INSERT INTO "opening" VALUES('fc71b0ec5f584301ad07397f81171543',1,'e4bffd201c2840c282db9870ad16c1c9',NULL,'9E4',NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,'{}');
CREATE TABLE opening_fit (
	id TEXT NOT NULL, 
	version INTEGER DEFAULT 1 NOT NULL, 
	case_key TEXT NOT NULL, 
	fit_key TEXT NOT NULL, 
	CONSTRAINT pk_opening_fit PRIMARY KEY (id), 
	CONSTRAINT fk_opening_fit_id FOREIGN KEY(id) REFERENCES opening (id), 
	CONSTRAINT fk_opening_fit_fit_key FOREIGN KEY(fit_key) REFERENCES fit_content ("key")
);
INSERT INTO "opening_fit" VALUES('e98f271227044a5989f6aafc85082a8d',1,'case','a8e0ba654ce651dc312b81ee49fe54ecc3d8f326dcb8086581341823c2ed4139');
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
INSERT INTO "own_field" VALUES('5152e8b56c764607a622dab707cd8962',1,'existing_item','key_group','Key group','choice','','["AA","BB"]');
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
INSERT INTO "part" VALUES('b951ac5746b540939e8f4af786ef4f6e',1,'C-1','mortise-cylinder',NULL,NULL,NULL,'EA','12.1','USD',NULL,NULL,NULL,'{}','{}');
INSERT INTO "part" VALUES('50876fbc3a9b434f8d8cd7901c828d76',1,'U-1','surface-unit',NULL,NULL,NULL,'EA',NULL,NULL,NULL,NULL,NULL,'{}','{}');
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
INSERT INTO "placed_unit" VALUES('702d64dc24cc4a4ab0e8d303fe5904dd',1,'e98f271227044a5989f6aafc85082a8d','active','secured','above',20.0,1100.0);
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
INSERT INTO "project" VALUES('b22cc83ec2fe41ab9fe5f1b8eaf31b97',1,'Saved yard','2026-11-28T06:57:07+00:00','mm','mm','{}');
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
INSERT INTO "route" VALUES('7673cea6fd3d4c4098f909401a4b6c39',1,'e98f271227044a5989f6aafc85082a8d','74d271bd2af4430fba4037a14985194b',6.0,1);
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
INSERT INTO "run" VALUES('dc386e03dcb842918e965f98b18d09a2',1,'7de91971eb0a4a5b8d773b4efb7554f3',NULL,'supply','J1',NULL,NULL,NULL,NULL,NULL,NULL);
INSERT INTO "run" VALUES('6c754b67bd5f46ceabde245bb140ff13',1,'7de91971eb0a4a5b8d773b4efb7554f3','e98f271227044a5989f6aafc85082a8d','J1','e98f271227044a5989f6aafc85082a8d',4.0,NULL,'18 AWG','solid',NULL,NULL);
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
INSERT INTO "set_line" VALUES('86c73a94268c4993ae58a55e89abb0ec',1,'64b1c692573f44f79efa2d2c0ef7e106','unit','U-1',1.0);
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
INSERT INTO "supply" VALUES('74d271bd2af4430fba4037a14985194b',1,NULL,'Closet',NULL,2.5,NULL,NULL,NULL,'laid',NULL,NULL,NULL,NULL,NULL);
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
INSERT INTO "waiver" VALUES('5cd315a9441d48c097a69b659994f834',1,'e98f271227044a5989f6aafc85082a8d','hand-known','','opening','f','keeper','seen','2026-01-02',NULL);
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
