BEGIN TRANSACTION;
CREATE TABLE alembic_version (version_num VARCHAR(32) NOT NULL, CONSTRAINT alembic_version_pkc PRIMARY KEY (version_num));
INSERT INTO "alembic_version" VALUES('0001');
CREATE TABLE building (
	id TEXT NOT NULL, 
	version INTEGER DEFAULT 1 NOT NULL, 
	name TEXT NOT NULL, 
	CONSTRAINT pk_building PRIMARY KEY (id), 
	CONSTRAINT uq_building_name UNIQUE (name)
);
INSERT INTO "building" VALUES('189f746a4959476e96bfbbe0256ef7d9',1,'Mill');
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
INSERT INTO "change_entry" VALUES(1,0,'part','cdc5e6e5670f44d3a941a2056eb03fac',NULL,'insert',NULL,'{"id":"cdc5e6e5670f44d3a941a2056eb03fac","kind":"mortise-cylinder","number":"C-1","unit":"EA","version":1}','test');
INSERT INTO "change_entry" VALUES(1,1,'part','f0ffb9d248e44675a04e37e1b32e7235',NULL,'insert',NULL,'{"id":"f0ffb9d248e44675a04e37e1b32e7235","kind":"surface-unit","number":"U-1","unit":"EA","version":1}','test');
INSERT INTO "change_entry" VALUES(1,2,'kit_content','4479f357cad1407b87425acdff7f3da2',NULL,'insert',NULL,'{"id":"4479f357cad1407b87425acdff7f3da2","number":"S-1","part_id":"cdc5e6e5670f44d3a941a2056eb03fac","quantity":2.0,"version":1}','test');
INSERT INTO "change_entry" VALUES(2,0,'building','189f746a4959476e96bfbbe0256ef7d9',NULL,'insert',NULL,'{"id":"189f746a4959476e96bfbbe0256ef7d9","name":"Mill","version":1}',NULL);
INSERT INTO "change_entry" VALUES(2,1,'level','a926641d7f5d45349305abaa33be4ca1',NULL,'insert',NULL,'{"building_id":"189f746a4959476e96bfbbe0256ef7d9","id":"a926641d7f5d45349305abaa33be4ca1","name":"1","sort":0,"version":1}',NULL);
INSERT INTO "change_entry" VALUES(2,2,'opening','b67aaaf7a04a4bbb979820c1c86452d5','b67aaaf7a04a4bbb979820c1c86452d5','insert',NULL,'{"id":"b67aaaf7a04a4bbb979820c1c86452d5","level_id":"a926641d7f5d45349305abaa33be4ca1","mark":"0012","stair":true,"version":1}','added by keeper');
INSERT INTO "change_entry" VALUES(2,3,'leaf','a6c20253d41645cfbe0b3d28c69e2a9f','b67aaaf7a04a4bbb979820c1c86452d5','insert',NULL,'{"id":"a6c20253d41645cfbe0b3d28c69e2a9f","opening_id":"b67aaaf7a04a4bbb979820c1c86452d5","ordinal":0,"position":"active","version":1}','added by keeper');
INSERT INTO "change_entry" VALUES(2,4,'leaf','b4810c113cf74988ba9bc958d4f35cc0','b67aaaf7a04a4bbb979820c1c86452d5','insert',NULL,'{"id":"b4810c113cf74988ba9bc958d4f35cc0","opening_id":"b67aaaf7a04a4bbb979820c1c86452d5","ordinal":1,"position":"inactive","version":1}','added by keeper');
INSERT INTO "change_entry" VALUES(3,0,'level','39a50469e2e541089af67f2afa9f86eb',NULL,'insert',NULL,'{"id":"39a50469e2e541089af67f2afa9f86eb","name":"roof","sort":1,"version":1}',NULL);
INSERT INTO "change_entry" VALUES(3,1,'opening','63b9cf5c8a2f44f78ac8bcddf4ecdf56','63b9cf5c8a2f44f78ac8bcddf4ecdf56','insert',NULL,'{"id":"63b9cf5c8a2f44f78ac8bcddf4ecdf56","level_id":"39a50469e2e541089af67f2afa9f86eb","mark":"9E4","version":1}','added by keeper');
INSERT INTO "change_entry" VALUES(3,2,'leaf','462b87d19d124fe78cba86150e1bd083','63b9cf5c8a2f44f78ac8bcddf4ecdf56','insert',NULL,'{"id":"462b87d19d124fe78cba86150e1bd083","opening_id":"63b9cf5c8a2f44f78ac8bcddf4ecdf56","ordinal":0,"position":"single","version":1}','added by keeper');
INSERT INTO "change_entry" VALUES(4,0,'existing_item','fb5b3a570477446e865f67bb0572ca00','b67aaaf7a04a4bbb979820c1c86452d5','insert',NULL,'{"backset_mm":69.85,"id":"fb5b3a570477446e865f67bb0572ca00","kind":"lock","opening_id":"b67aaaf7a04a4bbb979820c1c86452d5","ordinal":0,"version":1}','added by keeper');
INSERT INTO "change_entry" VALUES(5,0,'chosen_part','118b320aa6874b629e3b979294a084de','b67aaaf7a04a4bbb979820c1c86452d5','insert',NULL,'{"id":"118b320aa6874b629e3b979294a084de","opening_id":"b67aaaf7a04a4bbb979820c1c86452d5","part":"C-1","quantity":1.0,"role":"cylinder","version":1}',NULL);
INSERT INTO "change_entry" VALUES(6,0,'placed_unit','68871d68184a43209542621b95d95389','b67aaaf7a04a4bbb979820c1c86452d5','insert',NULL,'{"face":"secured","id":"68871d68184a43209542621b95d95389","leaf":"active","opening_id":"b67aaaf7a04a4bbb979820c1c86452d5","pattern":"above","version":1,"x_mm":20.0,"y_mm":1100.0}',NULL);
INSERT INTO "change_entry" VALUES(7,0,'own_field','967c4423188c4fd49c26f17b5cbc60ef',NULL,'insert',NULL,'{"choices":["AA","BB"],"entity":"existing_item","id":"967c4423188c4fd49c26f17b5cbc60ef","kind":"choice","label":"Key group","name":"key_group","unit":"","version":1}',NULL);
INSERT INTO "change_entry" VALUES(8,0,'existing_item','fb5b3a570477446e865f67bb0572ca00','b67aaaf7a04a4bbb979820c1c86452d5','update','{"extra":{}}','{"extra":{"key_group":"AA"}}','edited by keeper');
INSERT INTO "change_entry" VALUES(9,0,'import_mapping','0d63162a142d4653bd1955c26b3919a9',NULL,'insert',NULL,'{"fingerprint":"f","id":"0d63162a142d4653bd1955c26b3919a9","mapping":{"Mark":"opening.mark"},"name":"Doors","version":1}',NULL);
INSERT INTO "change_entry" VALUES(10,0,'opening_fit','b67aaaf7a04a4bbb979820c1c86452d5','b67aaaf7a04a4bbb979820c1c86452d5','insert',NULL,'{"case_key":"case","fit_key":"a8e0ba654ce651dc312b81ee49fe54ecc3d8f326dcb8086581341823c2ed4139","id":"b67aaaf7a04a4bbb979820c1c86452d5","version":1}',NULL);
INSERT INTO "change_entry" VALUES(11,0,'opening','b67aaaf7a04a4bbb979820c1c86452d5','b67aaaf7a04a4bbb979820c1c86452d5','update','{"hand":null}','{"hand":"LHR"}','edited by keeper');
INSERT INTO "change_entry" VALUES(12,0,'opening','b67aaaf7a04a4bbb979820c1c86452d5','b67aaaf7a04a4bbb979820c1c86452d5','update','{"hand":"LHR"}','{"hand":"RH"}','edited by keeper');
INSERT INTO "change_entry" VALUES(13,0,'opening','b67aaaf7a04a4bbb979820c1c86452d5','b67aaaf7a04a4bbb979820c1c86452d5','update','{"hand":"RH"}','{"hand":"LHR"}',NULL);
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
INSERT INTO "change_set" VALUES(1,'2026-11-25T10:56:33.881+00:00','keeper','import-catalogue','Catalogue','edit',NULL,3);
INSERT INTO "change_set" VALUES(2,'2026-11-25T10:56:33.887+00:00','keeper','add-opening','Add opening 0012','edit',NULL,5);
INSERT INTO "change_set" VALUES(3,'2026-11-25T10:56:33.891+00:00','keeper','add-opening','Add opening 9E4','edit',NULL,3);
INSERT INTO "change_set" VALUES(4,'2026-11-25T10:56:33.894+00:00','keeper','add-item','Add existing item lock to 0012','edit',NULL,1);
INSERT INTO "change_set" VALUES(5,'2026-11-25T10:56:33.896+00:00','keeper','choose-part','Choose C-1 as cylinder of 0012','edit',NULL,1);
INSERT INTO "change_set" VALUES(6,'2026-11-25T10:56:33.898+00:00','keeper','place-unit','Place the unit of 0012','edit',NULL,1);
INSERT INTO "change_set" VALUES(7,'2026-11-25T10:56:33.900+00:00','keeper','define-field','Define field Key group','edit',NULL,1);
INSERT INTO "change_set" VALUES(8,'2026-11-25T10:56:33.903+00:00','keeper','set-own-value','Set Key group','edit',NULL,1);
INSERT INTO "change_set" VALUES(9,'2026-11-25T10:56:33.905+00:00','keeper','import-survey','Mapping','edit',NULL,1);
INSERT INTO "change_set" VALUES(10,'2026-11-25T10:56:33.909+00:00','keeper','fit','Fit','edit',NULL,1);
INSERT INTO "change_set" VALUES(11,'2026-11-25T10:56:33.912+00:00','keeper','edit-facts','Edit hand of 0012','edit',NULL,1);
INSERT INTO "change_set" VALUES(12,'2026-11-25T10:56:33.915+00:00','keeper','edit-facts','Edit hand of 0012','edit',NULL,1);
INSERT INTO "change_set" VALUES(13,'2026-11-25T10:56:33.919+00:00','keeper','undo','Take back step 12: Edit hand of 0012','undo',12,1);
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
INSERT INTO "chosen_part" VALUES('118b320aa6874b629e3b979294a084de',1,'b67aaaf7a04a4bbb979820c1c86452d5','cylinder','C-1',1.0);
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
	item_notes TEXT, 
	extra TEXT DEFAULT '{}' NOT NULL, 
	CONSTRAINT pk_existing_item PRIMARY KEY (id), 
	CONSTRAINT fk_existing_item_opening_id FOREIGN KEY(opening_id) REFERENCES opening (id)
);
INSERT INTO "existing_item" VALUES('fb5b3a570477446e865f67bb0572ca00',2,'b67aaaf7a04a4bbb979820c1c86452d5',0,'lock',NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,69.85,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,'{"key_group":"AA"}');
CREATE TABLE fit_content (
	"key" TEXT NOT NULL, 
	status TEXT NOT NULL, 
	content TEXT NOT NULL, 
	CONSTRAINT pk_fit_content PRIMARY KEY ("key")
);
INSERT INTO "fit_content" VALUES('a8e0ba654ce651dc312b81ee49fe54ecc3d8f326dcb8086581341823c2ed4139','unknown','{"status":"unknown"}');
CREATE TABLE import_mapping (
	id TEXT NOT NULL, 
	version INTEGER DEFAULT 1 NOT NULL, 
	fingerprint TEXT NOT NULL, 
	name TEXT, 
	mapping TEXT DEFAULT '{}' NOT NULL, 
	CONSTRAINT pk_import_mapping PRIMARY KEY (id), 
	CONSTRAINT uq_import_mapping_fingerprint UNIQUE (fingerprint)
);
INSERT INTO "import_mapping" VALUES('0d63162a142d4653bd1955c26b3919a9',1,'f','Doors','{"Mark":"opening.mark"}');
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
INSERT INTO "kit_content" VALUES('4479f357cad1407b87425acdff7f3da2',1,'cdc5e6e5670f44d3a941a2056eb03fac','S-1',2.0);
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
INSERT INTO "leaf" VALUES('a6c20253d41645cfbe0b3d28c69e2a9f',1,'b67aaaf7a04a4bbb979820c1c86452d5',0,'active',NULL,NULL,NULL,NULL,NULL,NULL,NULL);
INSERT INTO "leaf" VALUES('b4810c113cf74988ba9bc958d4f35cc0',1,'b67aaaf7a04a4bbb979820c1c86452d5',1,'inactive',NULL,NULL,NULL,NULL,NULL,NULL,NULL);
INSERT INTO "leaf" VALUES('462b87d19d124fe78cba86150e1bd083',1,'63b9cf5c8a2f44f78ac8bcddf4ecdf56',0,'single',NULL,NULL,NULL,NULL,NULL,NULL,NULL);
CREATE TABLE level (
	id TEXT NOT NULL, 
	version INTEGER DEFAULT 1 NOT NULL, 
	building_id TEXT, 
	name TEXT, 
	sort INTEGER DEFAULT 0 NOT NULL, 
	CONSTRAINT pk_level PRIMARY KEY (id), 
	CONSTRAINT uq_level_building_id_name UNIQUE (building_id, name), 
	CONSTRAINT fk_level_building_id FOREIGN KEY(building_id) REFERENCES building (id)
);
INSERT INTO "level" VALUES('a926641d7f5d45349305abaa33be4ca1',1,'189f746a4959476e96bfbbe0256ef7d9','1',0);
INSERT INTO "level" VALUES('39a50469e2e541089af67f2afa9f86eb',1,NULL,'roof',1);
CREATE TABLE opening (
	id TEXT NOT NULL, 
	version INTEGER DEFAULT 1 NOT NULL, 
	level_id TEXT, 
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
	power_wish TEXT, 
	supply_distance_m FLOAT, 
	frame_material TEXT, 
	frame_stop_mm FLOAT, 
	wave TEXT, 
	priority INTEGER, 
	notes TEXT, 
	extra TEXT DEFAULT '{}' NOT NULL, 
	CONSTRAINT pk_opening PRIMARY KEY (id), 
	CONSTRAINT uq_opening_mark UNIQUE (mark), 
	CONSTRAINT fk_opening_level_id FOREIGN KEY(level_id) REFERENCES level (id)
);
INSERT INTO "opening" VALUES('b67aaaf7a04a4bbb979820c1c86452d5',4,'a926641d7f5d45349305abaa33be4ca1','0012',NULL,NULL,NULL,'LHR',NULL,1,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,'{}');
INSERT INTO "opening" VALUES('63b9cf5c8a2f44f78ac8bcddf4ecdf56',1,'39a50469e2e541089af67f2afa9f86eb','9E4',NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,'{}');
CREATE TABLE opening_fit (
	id TEXT NOT NULL, 
	version INTEGER DEFAULT 1 NOT NULL, 
	case_key TEXT NOT NULL, 
	fit_key TEXT NOT NULL, 
	CONSTRAINT pk_opening_fit PRIMARY KEY (id), 
	CONSTRAINT fk_opening_fit_id FOREIGN KEY(id) REFERENCES opening (id), 
	CONSTRAINT fk_opening_fit_fit_key FOREIGN KEY(fit_key) REFERENCES fit_content ("key")
);
INSERT INTO "opening_fit" VALUES('b67aaaf7a04a4bbb979820c1c86452d5',1,'case','a8e0ba654ce651dc312b81ee49fe54ecc3d8f326dcb8086581341823c2ed4139');
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
INSERT INTO "own_field" VALUES('967c4423188c4fd49c26f17b5cbc60ef',1,'existing_item','key_group','Key group','choice','','["AA","BB"]');
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
	attributes TEXT DEFAULT '{}' NOT NULL, 
	extra TEXT DEFAULT '{}' NOT NULL, 
	CONSTRAINT pk_part PRIMARY KEY (id), 
	CONSTRAINT uq_part_number UNIQUE (number)
);
INSERT INTO "part" VALUES('cdc5e6e5670f44d3a941a2056eb03fac',1,'C-1','mortise-cylinder',NULL,NULL,NULL,'EA',NULL,NULL,NULL,'{}','{}');
INSERT INTO "part" VALUES('f0ffb9d248e44675a04e37e1b32e7235',1,'U-1','surface-unit',NULL,NULL,NULL,'EA',NULL,NULL,NULL,'{}','{}');
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
INSERT INTO "placed_unit" VALUES('68871d68184a43209542621b95d95389',1,'b67aaaf7a04a4bbb979820c1c86452d5','active','secured','above',20.0,1100.0);
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
INSERT INTO "project" VALUES('9b24e23ad185408a95aac7226c351469',1,'Saved yard','2026-11-25T10:56:33+00:00','mm','mm','{}');
CREATE INDEX ix_level_building_id ON level (building_id);
CREATE INDEX ix_change_entry_opening_id ON change_entry (opening_id);
CREATE INDEX ix_change_entry_row_id ON change_entry (row_id);
CREATE INDEX ix_opening_level_id ON opening (level_id);
CREATE INDEX ix_leaf_opening_id ON leaf (opening_id);
CREATE INDEX ix_existing_item_opening_id ON existing_item (opening_id);
COMMIT;
