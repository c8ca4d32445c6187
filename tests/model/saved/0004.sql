BEGIN TRANSACTION;
CREATE TABLE alembic_version (version_num VARCHAR(32) NOT NULL, CONSTRAINT alembic_version_pkc PRIMARY KEY (version_num));
INSERT INTO "alembic_version" VALUES('0004');
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
INSERT INTO "assigned_part" VALUES('55c9ce3f4c2c465d9ea52b2e2f76a55f',1,'5b2a2223891c4ed6a89a18eb8cbe1bb3','5b2a2223891c4ed6a89a18eb8cbe1bb3','cylinder','C-1',1,1.0,'by-hand','SN-1',NULL,'planned');
CREATE TABLE building (
	id TEXT NOT NULL, 
	version INTEGER DEFAULT 1 NOT NULL, 
	name TEXT NOT NULL, 
	CONSTRAINT pk_building PRIMARY KEY (id), 
	CONSTRAINT uq_building_name UNIQUE (name)
);
INSERT INTO "building" VALUES('c6e8e79e7199490784aceb9be1c7499e',1,'Mill');
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
INSERT INTO "change_entry" VALUES(1,0,'part','fe5e641d9acc4ecc90c08c04ded2d5be',NULL,'insert',NULL,'{"id":"fe5e641d9acc4ecc90c08c04ded2d5be","kind":"mortise-cylinder","number":"C-1","unit":"EA","version":1}','test');
INSERT INTO "change_entry" VALUES(1,1,'part','576cf179916f488592b5f9172aecf1c5',NULL,'insert',NULL,'{"id":"576cf179916f488592b5f9172aecf1c5","kind":"surface-unit","number":"U-1","unit":"EA","version":1}','test');
INSERT INTO "change_entry" VALUES(1,2,'kit_content','dbe286b08e554777ac97de4c799377b6',NULL,'insert',NULL,'{"id":"dbe286b08e554777ac97de4c799377b6","number":"S-1","part_id":"fe5e641d9acc4ecc90c08c04ded2d5be","quantity":2.0,"version":1}','test');
INSERT INTO "change_entry" VALUES(2,0,'building','c6e8e79e7199490784aceb9be1c7499e',NULL,'insert',NULL,'{"id":"c6e8e79e7199490784aceb9be1c7499e","name":"Mill","version":1}',NULL);
INSERT INTO "change_entry" VALUES(2,1,'level','bfd6606f0e2242bf8d8b30984a8ee9ce',NULL,'insert',NULL,'{"building_id":"c6e8e79e7199490784aceb9be1c7499e","id":"bfd6606f0e2242bf8d8b30984a8ee9ce","name":"1","sort":0,"version":1}',NULL);
INSERT INTO "change_entry" VALUES(2,2,'opening','5b2a2223891c4ed6a89a18eb8cbe1bb3','5b2a2223891c4ed6a89a18eb8cbe1bb3','insert',NULL,'{"id":"5b2a2223891c4ed6a89a18eb8cbe1bb3","level_id":"bfd6606f0e2242bf8d8b30984a8ee9ce","mark":"0012","stair":true,"version":1}','added by keeper');
INSERT INTO "change_entry" VALUES(2,3,'leaf','51a2b455cf7e43a48993c47cad8eb1b7','5b2a2223891c4ed6a89a18eb8cbe1bb3','insert',NULL,'{"id":"51a2b455cf7e43a48993c47cad8eb1b7","opening_id":"5b2a2223891c4ed6a89a18eb8cbe1bb3","ordinal":0,"position":"active","version":1}','added by keeper');
INSERT INTO "change_entry" VALUES(2,4,'leaf','24bc7d40fdf640ee89b2732663a666b8','5b2a2223891c4ed6a89a18eb8cbe1bb3','insert',NULL,'{"id":"24bc7d40fdf640ee89b2732663a666b8","opening_id":"5b2a2223891c4ed6a89a18eb8cbe1bb3","ordinal":1,"position":"inactive","version":1}','added by keeper');
INSERT INTO "change_entry" VALUES(2,5,'lock_point','5b2a2223891c4ed6a89a18eb8cbe1bb3','5b2a2223891c4ed6a89a18eb8cbe1bb3','insert',NULL,'{"id":"5b2a2223891c4ed6a89a18eb8cbe1bb3","opening_id":"5b2a2223891c4ed6a89a18eb8cbe1bb3","version":1}',NULL);
INSERT INTO "change_entry" VALUES(3,0,'level','55ed390aac554781aaa5de3ac08e6c09',NULL,'insert',NULL,'{"id":"55ed390aac554781aaa5de3ac08e6c09","name":"roof","sort":1,"version":1}',NULL);
INSERT INTO "change_entry" VALUES(3,1,'opening','8145ed64e36443d2a00bbb23de9ad697','8145ed64e36443d2a00bbb23de9ad697','insert',NULL,'{"id":"8145ed64e36443d2a00bbb23de9ad697","level_id":"55ed390aac554781aaa5de3ac08e6c09","mark":"9E4","version":1}','added by keeper');
INSERT INTO "change_entry" VALUES(3,2,'leaf','5bab6a65b35d4ba0bb26c4a12349248c','8145ed64e36443d2a00bbb23de9ad697','insert',NULL,'{"id":"5bab6a65b35d4ba0bb26c4a12349248c","opening_id":"8145ed64e36443d2a00bbb23de9ad697","ordinal":0,"position":"single","version":1}','added by keeper');
INSERT INTO "change_entry" VALUES(3,3,'lock_point','8145ed64e36443d2a00bbb23de9ad697','8145ed64e36443d2a00bbb23de9ad697','insert',NULL,'{"id":"8145ed64e36443d2a00bbb23de9ad697","opening_id":"8145ed64e36443d2a00bbb23de9ad697","version":1}',NULL);
INSERT INTO "change_entry" VALUES(4,0,'existing_item','98dd4695209642bc9718975e98c285ba','5b2a2223891c4ed6a89a18eb8cbe1bb3','insert',NULL,'{"backset_mm":69.85,"id":"98dd4695209642bc9718975e98c285ba","kind":"lock","opening_id":"5b2a2223891c4ed6a89a18eb8cbe1bb3","ordinal":0,"version":1}','added by keeper');
INSERT INTO "change_entry" VALUES(4,1,'lock_point','5b2a2223891c4ed6a89a18eb8cbe1bb3','5b2a2223891c4ed6a89a18eb8cbe1bb3','update','{"item_id":null}','{"item_id":"98dd4695209642bc9718975e98c285ba"}',NULL);
INSERT INTO "change_entry" VALUES(5,0,'chosen_part','85fbe4e7443f4d82931a8c847d07ef22','5b2a2223891c4ed6a89a18eb8cbe1bb3','insert',NULL,'{"id":"85fbe4e7443f4d82931a8c847d07ef22","lock_point_id":"5b2a2223891c4ed6a89a18eb8cbe1bb3","opening_id":"5b2a2223891c4ed6a89a18eb8cbe1bb3","part":"C-1","quantity":1.0,"role":"cylinder","version":1}',NULL);
INSERT INTO "change_entry" VALUES(6,0,'placed_unit','bd6fe855b9404b88a454d6e3e3d012a3','5b2a2223891c4ed6a89a18eb8cbe1bb3','insert',NULL,'{"face":"secured","id":"bd6fe855b9404b88a454d6e3e3d012a3","leaf":"active","lock_point_id":"5b2a2223891c4ed6a89a18eb8cbe1bb3","opening_id":"5b2a2223891c4ed6a89a18eb8cbe1bb3","pattern":"above","version":1,"x_mm":20.0,"y_mm":1100.0}',NULL);
INSERT INTO "change_entry" VALUES(7,0,'own_field','af12676b82364dc990fa001bc4f66f91',NULL,'insert',NULL,'{"choices":["AA","BB"],"entity":"existing_item","id":"af12676b82364dc990fa001bc4f66f91","kind":"choice","label":"Key group","name":"key_group","unit":"","version":1}',NULL);
INSERT INTO "change_entry" VALUES(8,0,'existing_item','98dd4695209642bc9718975e98c285ba','5b2a2223891c4ed6a89a18eb8cbe1bb3','update','{"extra":{}}','{"extra":{"key_group":"AA"}}','edited by keeper');
INSERT INTO "change_entry" VALUES(9,0,'import_mapping','6d8721741830407e8ea94f57a608562f',NULL,'insert',NULL,'{"fingerprint":"f","id":"6d8721741830407e8ea94f57a608562f","mapping":{"Mark":"opening.mark"},"name":"Doors","version":1}',NULL);
INSERT INTO "change_entry" VALUES(10,0,'opening_fit','5b2a2223891c4ed6a89a18eb8cbe1bb3','5b2a2223891c4ed6a89a18eb8cbe1bb3','insert',NULL,'{"case_key":"case","fit_key":"a8e0ba654ce651dc312b81ee49fe54ecc3d8f326dcb8086581341823c2ed4139","id":"5b2a2223891c4ed6a89a18eb8cbe1bb3","opening_id":"5b2a2223891c4ed6a89a18eb8cbe1bb3","version":1}',NULL);
INSERT INTO "change_entry" VALUES(11,0,'supply','1c09ce71f3c84015a9d66c4cb64b3dd4',NULL,'insert',NULL,'{"id":"1c09ce71f3c84015a9d66c4cb64b3dd4","name":"Closet","use":"laid","version":1,"x_m":2.5}',NULL);
INSERT INTO "change_entry" VALUES(11,1,'circuit','c77502a5ce0948f8996d13c62eb69b44',NULL,'insert',NULL,'{"alarm":"drops","id":"c77502a5ce0948f8996d13c62eb69b44","name":"A","supply_id":"1c09ce71f3c84015a9d66c4cb64b3dd4","version":1}',NULL);
INSERT INTO "change_entry" VALUES(11,2,'run','cabf465e982d486d96ac67229bf321d8',NULL,'insert',NULL,'{"circuit_id":"c77502a5ce0948f8996d13c62eb69b44","from_node":"supply","id":"cabf465e982d486d96ac67229bf321d8","to_node":"J1","version":1}',NULL);
INSERT INTO "change_entry" VALUES(11,3,'run','d4c14b9a61e449e69f3e32ca92d7ad38','5b2a2223891c4ed6a89a18eb8cbe1bb3','insert',NULL,'{"circuit_id":"c77502a5ce0948f8996d13c62eb69b44","from_node":"J1","gauge":"18 AWG","id":"d4c14b9a61e449e69f3e32ca92d7ad38","length_m":4.0,"opening_id":"5b2a2223891c4ed6a89a18eb8cbe1bb3","stranding":"solid","to_node":"5b2a2223891c4ed6a89a18eb8cbe1bb3","version":1}',NULL);
INSERT INTO "change_entry" VALUES(11,4,'route','61200af3d8fa4894aaa4dc030ddbde01','5b2a2223891c4ed6a89a18eb8cbe1bb3','insert',NULL,'{"id":"61200af3d8fa4894aaa4dc030ddbde01","length_m":6.0,"opening_id":"5b2a2223891c4ed6a89a18eb8cbe1bb3","pinned":true,"supply_id":"1c09ce71f3c84015a9d66c4cb64b3dd4","version":1}',NULL);
INSERT INTO "change_entry" VALUES(12,0,'hardware_set','1a7b7ff29a1a4c2d83fe95eaea50dbe5',NULL,'insert',NULL,'{"id":"1a7b7ff29a1a4c2d83fe95eaea50dbe5","name":"HS-1","version":1}',NULL);
INSERT INTO "change_entry" VALUES(12,1,'set_line','03f92e148559447c88f88e674bb3b064',NULL,'insert',NULL,'{"id":"03f92e148559447c88f88e674bb3b064","part":"U-1","quantity":1.0,"role":"unit","set_id":"1a7b7ff29a1a4c2d83fe95eaea50dbe5","version":1}',NULL);
INSERT INTO "change_entry" VALUES(12,2,'opening','5b2a2223891c4ed6a89a18eb8cbe1bb3','5b2a2223891c4ed6a89a18eb8cbe1bb3','update','{"set_id":null}','{"set_id":"1a7b7ff29a1a4c2d83fe95eaea50dbe5"}',NULL);
INSERT INTO "change_entry" VALUES(12,3,'waiver','a762353e67c548c9a39c9fd936555c80','5b2a2223891c4ed6a89a18eb8cbe1bb3','insert',NULL,'{"about":"","facts":"f","given_on":"2026-01-02","id":"a762353e67c548c9a39c9fd936555c80","opening_id":"5b2a2223891c4ed6a89a18eb8cbe1bb3","person":"keeper","reason":"seen","rule":"hand-known","scope":"opening","version":1}',NULL);
INSERT INTO "change_entry" VALUES(12,4,'issued_packet','59a945a2e85e4284b7673207c554830b','5b2a2223891c4ed6a89a18eb8cbe1bb3','insert',NULL,'{"at":"2026-01-02","by":"keeper","case_key":"case","id":"59a945a2e85e4284b7673207c554830b","opening_id":"5b2a2223891c4ed6a89a18eb8cbe1bb3","version":1}',NULL);
INSERT INTO "change_entry" VALUES(13,0,'assigned_part','55c9ce3f4c2c465d9ea52b2e2f76a55f','5b2a2223891c4ed6a89a18eb8cbe1bb3','insert',NULL,'{"id":"55c9ce3f4c2c465d9ea52b2e2f76a55f","lock_point_id":"5b2a2223891c4ed6a89a18eb8cbe1bb3","opening_id":"5b2a2223891c4ed6a89a18eb8cbe1bb3","part":"C-1","piece":1,"quantity":1.0,"role":"cylinder","serial":"SN-1","source":"by-hand","state":"planned","version":1}',NULL);
INSERT INTO "change_entry" VALUES(14,0,'opening','5b2a2223891c4ed6a89a18eb8cbe1bb3','5b2a2223891c4ed6a89a18eb8cbe1bb3','update','{"hand":null}','{"hand":"LHR"}','edited by keeper');
INSERT INTO "change_entry" VALUES(15,0,'opening','5b2a2223891c4ed6a89a18eb8cbe1bb3','5b2a2223891c4ed6a89a18eb8cbe1bb3','update','{"hand":"LHR"}','{"hand":"RH"}','edited by keeper');
INSERT INTO "change_entry" VALUES(16,0,'opening','5b2a2223891c4ed6a89a18eb8cbe1bb3','5b2a2223891c4ed6a89a18eb8cbe1bb3','update','{"hand":"RH"}','{"hand":"LHR"}',NULL);
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
INSERT INTO "change_set" VALUES(1,'2026-11-28T07:17:08.078+00:00','keeper','import-catalogue','Catalogue','edit',NULL,3);
INSERT INTO "change_set" VALUES(2,'2026-11-28T07:17:08.120+00:00','keeper','add-opening','Add opening 0012','edit',NULL,6);
INSERT INTO "change_set" VALUES(3,'2026-11-28T07:17:08.169+00:00','keeper','add-opening','Add opening 9E4','edit',NULL,4);
INSERT INTO "change_set" VALUES(4,'2026-11-28T07:17:08.194+00:00','keeper','add-item','Add existing item lock to 0012','edit',NULL,2);
INSERT INTO "change_set" VALUES(5,'2026-11-28T07:17:08.230+00:00','keeper','choose-part','Choose C-1 as cylinder of 0012','edit',NULL,1);
INSERT INTO "change_set" VALUES(6,'2026-11-28T07:17:08.247+00:00','keeper','place-unit','Place the unit of 0012','edit',NULL,1);
INSERT INTO "change_set" VALUES(7,'2026-11-28T07:17:08.259+00:00','keeper','define-field','Define field Key group','edit',NULL,1);
INSERT INTO "change_set" VALUES(8,'2026-11-28T07:17:08.271+00:00','keeper','set-own-value','Set Key group','edit',NULL,1);
INSERT INTO "change_set" VALUES(9,'2026-11-28T07:17:08.286+00:00','keeper','import-survey','Mapping','edit',NULL,1);
INSERT INTO "change_set" VALUES(10,'2026-11-28T07:17:08.292+00:00','keeper','fit','Fit','edit',NULL,1);
INSERT INTO "change_set" VALUES(11,'2026-11-28T07:17:08.307+00:00','keeper','lay-supply','Power','edit',NULL,5);
INSERT INTO "change_set" VALUES(12,'2026-11-28T07:17:08.329+00:00','keeper','make-set','Sets, waivers, packets','edit',NULL,5);
INSERT INTO "change_set" VALUES(13,'2026-11-28T07:17:08.353+00:00','keeper','record-piece','Pieces','edit',NULL,1);
INSERT INTO "change_set" VALUES(14,'2026-11-28T07:17:08.363+00:00','keeper','edit-facts','Edit hand of 0012','edit',NULL,1);
INSERT INTO "change_set" VALUES(15,'2026-11-28T07:17:08.382+00:00','keeper','edit-facts','Edit hand of 0012','edit',NULL,1);
INSERT INTO "change_set" VALUES(16,'2026-11-28T07:17:08.404+00:00','keeper','undo','Take back step 15: Edit hand of 0012','undo',15,1);
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
INSERT INTO "chosen_part" VALUES('85fbe4e7443f4d82931a8c847d07ef22',1,'5b2a2223891c4ed6a89a18eb8cbe1bb3','5b2a2223891c4ed6a89a18eb8cbe1bb3','cylinder','C-1',1.0);
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
INSERT INTO "circuit" VALUES('c77502a5ce0948f8996d13c62eb69b44',1,'1c09ce71f3c84015a9d66c4cb64b3dd4','A',NULL,NULL,NULL,NULL,'drops',NULL);
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
INSERT INTO "existing_item" VALUES('98dd4695209642bc9718975e98c285ba',2,'5b2a2223891c4ed6a89a18eb8cbe1bb3',0,'lock',NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,69.85,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,'{"key_group":"AA"}');
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
INSERT INTO "hardware_set" VALUES('1a7b7ff29a1a4c2d83fe95eaea50dbe5',1,'HS-1',NULL);
CREATE TABLE import_mapping (
	id TEXT NOT NULL, 
	version INTEGER DEFAULT 1 NOT NULL, 
	fingerprint TEXT NOT NULL, 
	name TEXT, 
	mapping TEXT DEFAULT '{}' NOT NULL, 
	CONSTRAINT pk_import_mapping PRIMARY KEY (id), 
	CONSTRAINT uq_import_mapping_fingerprint UNIQUE (fingerprint)
);
INSERT INTO "import_mapping" VALUES('6d8721741830407e8ea94f57a608562f',1,'f','Doors','{"Mark":"opening.mark"}');
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
INSERT INTO "issued_packet" VALUES('59a945a2e85e4284b7673207c554830b',1,'5b2a2223891c4ed6a89a18eb8cbe1bb3','2026-01-02','keeper','case');
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
INSERT INTO "kit_content" VALUES('dbe286b08e554777ac97de4c799377b6',1,'fe5e641d9acc4ecc90c08c04ded2d5be','S-1',2.0);
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
INSERT INTO "leaf" VALUES('51a2b455cf7e43a48993c47cad8eb1b7',1,'5b2a2223891c4ed6a89a18eb8cbe1bb3',0,'active',NULL,NULL,NULL,NULL,NULL,NULL,NULL);
INSERT INTO "leaf" VALUES('24bc7d40fdf640ee89b2732663a666b8',1,'5b2a2223891c4ed6a89a18eb8cbe1bb3',1,'inactive',NULL,NULL,NULL,NULL,NULL,NULL,NULL);
INSERT INTO "leaf" VALUES('5bab6a65b35d4ba0bb26c4a12349248c',1,'8145ed64e36443d2a00bbb23de9ad697',0,'single',NULL,NULL,NULL,NULL,NULL,NULL,NULL);
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
INSERT INTO "level" VALUES('bfd6606f0e2242bf8d8b30984a8ee9ce',1,'c6e8e79e7199490784aceb9be1c7499e','1',0,NULL);
INSERT INTO "level" VALUES('55ed390aac554781aaa5de3ac08e6c09',1,NULL,'roof',1,NULL);
CREATE TABLE lock_point (
	id TEXT NOT NULL, 
	version INTEGER DEFAULT 1 NOT NULL, 
	opening_id TEXT NOT NULL, 
	item_id TEXT, 
	CONSTRAINT pk_lock_point PRIMARY KEY (id), 
	CONSTRAINT fk_lock_point_opening_id FOREIGN KEY(opening_id) REFERENCES opening (id), 
	CONSTRAINT fk_lock_point_item_id FOREIGN KEY(item_id) REFERENCES existing_item (id) DEFERRABLE INITIALLY DEFERRED
);
INSERT INTO "lock_point" VALUES('5b2a2223891c4ed6a89a18eb8cbe1bb3',2,'5b2a2223891c4ed6a89a18eb8cbe1bb3','98dd4695209642bc9718975e98c285ba');
INSERT INTO "lock_point" VALUES('8145ed64e36443d2a00bbb23de9ad697',1,'8145ed64e36443d2a00bbb23de9ad697',NULL);
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
INSERT INTO "opening" VALUES('5b2a2223891c4ed6a89a18eb8cbe1bb3',5,'bfd6606f0e2242bf8d8b30984a8ee9ce','1a7b7ff29a1a4c2d83fe95eaea50dbe5','0012',NULL,NULL,NULL,'LHR',NULL,1,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,'{}');
INSERT INTO "opening" VALUES('8145ed64e36443d2a00bbb23de9ad697',1,'55ed390aac554781aaa5de3ac08e6c09',NULL,'9E4',NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,'{}');
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
INSERT INTO "opening_fit" VALUES('5b2a2223891c4ed6a89a18eb8cbe1bb3',1,'5b2a2223891c4ed6a89a18eb8cbe1bb3','case','a8e0ba654ce651dc312b81ee49fe54ecc3d8f326dcb8086581341823c2ed4139');
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
INSERT INTO "own_field" VALUES('af12676b82364dc990fa001bc4f66f91',1,'existing_item','key_group','Key group','choice','','["AA","BB"]');
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
INSERT INTO "part" VALUES('fe5e641d9acc4ecc90c08c04ded2d5be',1,'C-1','mortise-cylinder',NULL,NULL,NULL,'EA',NULL,NULL,NULL,NULL,NULL,'{}','{}');
INSERT INTO "part" VALUES('576cf179916f488592b5f9172aecf1c5',1,'U-1','surface-unit',NULL,NULL,NULL,'EA',NULL,NULL,NULL,NULL,NULL,'{}','{}');
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
INSERT INTO "placed_unit" VALUES('bd6fe855b9404b88a454d6e3e3d012a3',1,'5b2a2223891c4ed6a89a18eb8cbe1bb3','5b2a2223891c4ed6a89a18eb8cbe1bb3','active','secured','above',20.0,1100.0);
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
INSERT INTO "project" VALUES('9e1643fb556e4dc2b655d60aee5ba7aa',1,'Saved yard','2026-11-28T07:17:07+00:00','mm','mm','{}');
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
INSERT INTO "route" VALUES('61200af3d8fa4894aaa4dc030ddbde01',1,'5b2a2223891c4ed6a89a18eb8cbe1bb3','1c09ce71f3c84015a9d66c4cb64b3dd4',6.0,1);
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
INSERT INTO "run" VALUES('cabf465e982d486d96ac67229bf321d8',1,'c77502a5ce0948f8996d13c62eb69b44',NULL,'supply','J1',NULL,NULL,NULL,NULL,NULL,NULL);
INSERT INTO "run" VALUES('d4c14b9a61e449e69f3e32ca92d7ad38',1,'c77502a5ce0948f8996d13c62eb69b44','5b2a2223891c4ed6a89a18eb8cbe1bb3','J1','5b2a2223891c4ed6a89a18eb8cbe1bb3',4.0,NULL,'18 AWG','solid',NULL,NULL);
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
INSERT INTO "set_line" VALUES('03f92e148559447c88f88e674bb3b064',1,'1a7b7ff29a1a4c2d83fe95eaea50dbe5','unit','U-1',1.0);
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
INSERT INTO "supply" VALUES('1c09ce71f3c84015a9d66c4cb64b3dd4',1,NULL,'Closet',NULL,2.5,NULL,NULL,NULL,'laid',NULL,NULL,NULL,NULL,NULL);
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
INSERT INTO "waiver" VALUES('a762353e67c548c9a39c9fd936555c80',1,'5b2a2223891c4ed6a89a18eb8cbe1bb3','hand-known','','opening','f','keeper','seen','2026-01-02',NULL);
CREATE INDEX ix_level_building_id ON level (building_id);
CREATE INDEX ix_change_entry_opening_id ON change_entry (opening_id);
CREATE INDEX ix_change_entry_row_id ON change_entry (row_id);
CREATE INDEX ix_opening_set_id ON opening (set_id);
CREATE INDEX ix_opening_level_id ON opening (level_id);
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
CREATE INDEX ix_assigned_part_opening_id ON assigned_part (opening_id);
CREATE INDEX ix_assigned_part_lock_point_id ON assigned_part (lock_point_id);
CREATE INDEX ix_opening_fit_opening_id ON opening_fit (opening_id);
COMMIT;
