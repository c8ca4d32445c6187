BEGIN TRANSACTION;
CREATE TABLE alembic_version (version_num VARCHAR(32) NOT NULL, CONSTRAINT alembic_version_pkc PRIMARY KEY (version_num));
INSERT INTO "alembic_version" VALUES('0005');
CREATE TABLE building (
	id TEXT NOT NULL, 
	version INTEGER DEFAULT 1 NOT NULL, 
	name TEXT NOT NULL, 
	CONSTRAINT pk_building PRIMARY KEY (id), 
	CONSTRAINT uq_building_name UNIQUE (name)
);
INSERT INTO "building" VALUES('3c1e38033a9840bc83125f90eaf1a1eb',1,'Mill');
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
INSERT INTO "change_entry" VALUES(1,0,'part','4c0adcd9334240f59dc09cda03e7aef1',NULL,'insert',NULL,'{"id":"4c0adcd9334240f59dc09cda03e7aef1","kind":"mortise-cylinder","number":"C-1","unit":"EA","version":1}','test');
INSERT INTO "change_entry" VALUES(1,1,'part','4190b6add211451c9641b8590d256aed',NULL,'insert',NULL,'{"id":"4190b6add211451c9641b8590d256aed","kind":"surface-unit","number":"U-1","unit":"EA","version":1}','test');
INSERT INTO "change_entry" VALUES(1,2,'kit_content','2266195a99344c2995fb581a55456de3',NULL,'insert',NULL,'{"id":"2266195a99344c2995fb581a55456de3","number":"S-1","part_id":"4c0adcd9334240f59dc09cda03e7aef1","quantity":2.0,"version":1}','test');
INSERT INTO "change_entry" VALUES(2,0,'building','3c1e38033a9840bc83125f90eaf1a1eb',NULL,'insert',NULL,'{"id":"3c1e38033a9840bc83125f90eaf1a1eb","name":"Mill","version":1}',NULL);
INSERT INTO "change_entry" VALUES(2,1,'level','896ffb794cb34340a7bdce0bd247f948',NULL,'insert',NULL,'{"building_id":"3c1e38033a9840bc83125f90eaf1a1eb","id":"896ffb794cb34340a7bdce0bd247f948","name":"1","sort":0,"version":1}',NULL);
INSERT INTO "change_entry" VALUES(2,2,'opening','590680c57f10457197745d6e6c794452','590680c57f10457197745d6e6c794452','insert',NULL,'{"id":"590680c57f10457197745d6e6c794452","level_id":"896ffb794cb34340a7bdce0bd247f948","mark":"0012","stair":true,"version":1}','added by keeper');
INSERT INTO "change_entry" VALUES(2,3,'leaf','de7fb6ddc6024527bb0a4a9aae690751','590680c57f10457197745d6e6c794452','insert',NULL,'{"id":"de7fb6ddc6024527bb0a4a9aae690751","opening_id":"590680c57f10457197745d6e6c794452","ordinal":0,"position":"active","version":1}','added by keeper');
INSERT INTO "change_entry" VALUES(2,4,'leaf','8c7c4aa7266740aabb64a376b51b2ff7','590680c57f10457197745d6e6c794452','insert',NULL,'{"id":"8c7c4aa7266740aabb64a376b51b2ff7","opening_id":"590680c57f10457197745d6e6c794452","ordinal":1,"position":"inactive","version":1}','added by keeper');
INSERT INTO "change_entry" VALUES(3,0,'level','c5737278373d433fa6a0395d8ed34418',NULL,'insert',NULL,'{"id":"c5737278373d433fa6a0395d8ed34418","name":"roof","sort":1,"version":1}',NULL);
INSERT INTO "change_entry" VALUES(3,1,'opening','c5c807f461f44c73b269ade8719a61d2','c5c807f461f44c73b269ade8719a61d2','insert',NULL,'{"id":"c5c807f461f44c73b269ade8719a61d2","level_id":"c5737278373d433fa6a0395d8ed34418","mark":"9E4","version":1}','added by keeper');
INSERT INTO "change_entry" VALUES(3,2,'leaf','76973c8f23b24e7aa7d633f3de1512cf','c5c807f461f44c73b269ade8719a61d2','insert',NULL,'{"id":"76973c8f23b24e7aa7d633f3de1512cf","opening_id":"c5c807f461f44c73b269ade8719a61d2","ordinal":0,"position":"single","version":1}','added by keeper');
INSERT INTO "change_entry" VALUES(4,0,'existing_item','753bdb3a80dd47cbb6c1a02ed4709dcf','590680c57f10457197745d6e6c794452','insert',NULL,'{"backset_mm":69.85,"id":"753bdb3a80dd47cbb6c1a02ed4709dcf","kind":"lock","opening_id":"590680c57f10457197745d6e6c794452","ordinal":0,"version":1}','added by keeper');
INSERT INTO "change_entry" VALUES(5,0,'chosen_part','e9fd21cd78f042e984e7865af0311752','590680c57f10457197745d6e6c794452','insert',NULL,'{"id":"e9fd21cd78f042e984e7865af0311752","opening_id":"590680c57f10457197745d6e6c794452","part":"C-1","quantity":1.0,"role":"cylinder","version":1}',NULL);
INSERT INTO "change_entry" VALUES(6,0,'placed_unit','4f80192063a4447d9f9da5d8abb05d6c','590680c57f10457197745d6e6c794452','insert',NULL,'{"face":"secured","id":"4f80192063a4447d9f9da5d8abb05d6c","leaf":"active","opening_id":"590680c57f10457197745d6e6c794452","pattern":"above","version":1,"x_mm":20.0,"y_mm":1100.0}',NULL);
INSERT INTO "change_entry" VALUES(7,0,'own_field','1cace4a5825a4ca1928602768cabe4ec',NULL,'insert',NULL,'{"choices":["AA","BB"],"entity":"existing_item","id":"1cace4a5825a4ca1928602768cabe4ec","kind":"choice","label":"Key group","name":"key_group","unit":"","version":1}',NULL);
INSERT INTO "change_entry" VALUES(8,0,'existing_item','753bdb3a80dd47cbb6c1a02ed4709dcf','590680c57f10457197745d6e6c794452','update','{"extra":{}}','{"extra":{"key_group":"AA"}}','edited by keeper');
INSERT INTO "change_entry" VALUES(9,0,'import_mapping','cb9001b2a99040ab9e4bd1cd55149986',NULL,'insert',NULL,'{"fingerprint":"f","id":"cb9001b2a99040ab9e4bd1cd55149986","mapping":{"Mark":"opening.mark"},"name":"Doors","version":1}',NULL);
INSERT INTO "change_entry" VALUES(10,0,'opening_fit','590680c57f10457197745d6e6c794452','590680c57f10457197745d6e6c794452','insert',NULL,'{"case_key":"case","fit_key":"a8e0ba654ce651dc312b81ee49fe54ecc3d8f326dcb8086581341823c2ed4139","id":"590680c57f10457197745d6e6c794452","version":1}',NULL);
INSERT INTO "change_entry" VALUES(11,0,'supply','229231e6ab7d4137acce3f1da7b66350',NULL,'insert',NULL,'{"id":"229231e6ab7d4137acce3f1da7b66350","name":"Closet","use":"laid","version":1,"x_m":2.5}',NULL);
INSERT INTO "change_entry" VALUES(11,1,'circuit','7d3f41a68806433b84630bbfbe5c5e75',NULL,'insert',NULL,'{"alarm":"drops","id":"7d3f41a68806433b84630bbfbe5c5e75","name":"A","supply_id":"229231e6ab7d4137acce3f1da7b66350","version":1}',NULL);
INSERT INTO "change_entry" VALUES(11,2,'run','6e9eb17cd99c4c06a8d26926f0977eab',NULL,'insert',NULL,'{"circuit_id":"7d3f41a68806433b84630bbfbe5c5e75","from_node":"supply","id":"6e9eb17cd99c4c06a8d26926f0977eab","to_node":"J1","version":1}',NULL);
INSERT INTO "change_entry" VALUES(11,3,'run','bfba703dc9a9459090199c4c643e2f65','590680c57f10457197745d6e6c794452','insert',NULL,'{"circuit_id":"7d3f41a68806433b84630bbfbe5c5e75","from_node":"J1","gauge":"18 AWG","id":"bfba703dc9a9459090199c4c643e2f65","length_m":4.0,"opening_id":"590680c57f10457197745d6e6c794452","stranding":"solid","to_node":"590680c57f10457197745d6e6c794452","version":1}',NULL);
INSERT INTO "change_entry" VALUES(11,4,'route','d5aef2971291447fb646512c76876852','590680c57f10457197745d6e6c794452','insert',NULL,'{"id":"d5aef2971291447fb646512c76876852","length_m":6.0,"opening_id":"590680c57f10457197745d6e6c794452","pinned":true,"supply_id":"229231e6ab7d4137acce3f1da7b66350","version":1}',NULL);
INSERT INTO "change_entry" VALUES(12,0,'hardware_set','c0340209f53d49748a62576a107bc36f',NULL,'insert',NULL,'{"id":"c0340209f53d49748a62576a107bc36f","name":"HS-1","version":1}',NULL);
INSERT INTO "change_entry" VALUES(12,1,'set_line','48f326203f15409383282c6e675e1d2b',NULL,'insert',NULL,'{"id":"48f326203f15409383282c6e675e1d2b","part":"U-1","quantity":1.0,"role":"unit","set_id":"c0340209f53d49748a62576a107bc36f","version":1}',NULL);
INSERT INTO "change_entry" VALUES(12,2,'opening','590680c57f10457197745d6e6c794452','590680c57f10457197745d6e6c794452','update','{"set_id":null}','{"set_id":"c0340209f53d49748a62576a107bc36f"}',NULL);
INSERT INTO "change_entry" VALUES(12,3,'waiver','30a557ea4d994c51b7fce2598332d578','590680c57f10457197745d6e6c794452','insert',NULL,'{"about":"","facts":"f","given_on":"2026-01-02","id":"30a557ea4d994c51b7fce2598332d578","opening_id":"590680c57f10457197745d6e6c794452","person":"keeper","reason":"seen","rule":"hand-known","scope":"opening","version":1}',NULL);
INSERT INTO "change_entry" VALUES(12,4,'issued_packet','09cd33c8f9c040988041c316ba597dfd','590680c57f10457197745d6e6c794452','insert',NULL,'{"at":"2026-01-02","by":"keeper","case_key":"case","id":"09cd33c8f9c040988041c316ba597dfd","opening_id":"590680c57f10457197745d6e6c794452","version":1}',NULL);
INSERT INTO "change_entry" VALUES(13,0,'person','acb4d96c7b6c4e1e8603026d9115f5ea',NULL,'insert',NULL,'{"id":"acb4d96c7b6c4e1e8603026d9115f5ea","name":"keeper","role":"specifier","version":1}',NULL);
INSERT INTO "change_entry" VALUES(14,0,'opening','590680c57f10457197745d6e6c794452','590680c57f10457197745d6e6c794452','update','{"hand":null}','{"hand":"LHR"}','edited by keeper');
INSERT INTO "change_entry" VALUES(15,0,'opening','590680c57f10457197745d6e6c794452','590680c57f10457197745d6e6c794452','update','{"hand":"LHR"}','{"hand":"RH"}','edited by keeper');
INSERT INTO "change_entry" VALUES(16,0,'opening','590680c57f10457197745d6e6c794452','590680c57f10457197745d6e6c794452','update','{"hand":"RH"}','{"hand":"LHR"}',NULL);
CREATE TABLE change_reference (
	row_id TEXT NOT NULL, 
	change_set INTEGER NOT NULL, 
	CONSTRAINT pk_change_reference PRIMARY KEY (row_id, change_set), 
	CONSTRAINT fk_change_reference_change_set FOREIGN KEY(change_set) REFERENCES change_set (number)
);
INSERT INTO "change_reference" VALUES('4c0adcd9334240f59dc09cda03e7aef1',1);
INSERT INTO "change_reference" VALUES('3c1e38033a9840bc83125f90eaf1a1eb',2);
INSERT INTO "change_reference" VALUES('896ffb794cb34340a7bdce0bd247f948',2);
INSERT INTO "change_reference" VALUES('c5737278373d433fa6a0395d8ed34418',3);
INSERT INTO "change_reference" VALUES('229231e6ab7d4137acce3f1da7b66350',11);
INSERT INTO "change_reference" VALUES('7d3f41a68806433b84630bbfbe5c5e75',11);
INSERT INTO "change_reference" VALUES('c0340209f53d49748a62576a107bc36f',12);
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
	CONSTRAINT pk_change_set PRIMARY KEY (number), 
	CONSTRAINT uq_change_set_uuid UNIQUE (uuid), 
	CONSTRAINT fk_change_set_target FOREIGN KEY(target) REFERENCES change_set (number)
);
INSERT INTO "change_set" VALUES(1,'a27ab5e5f2e343a0832532750b29fd4a',0,'2026-11-28T06:58:29.116+00:00','keeper','vm','b4a84fdae5874f679780cf628f8c703f','import-catalogue','Catalogue','edit',NULL,3);
INSERT INTO "change_set" VALUES(2,'27e96da9a0e14fd5886c30db9882eff7',1,'2026-11-28T06:58:29.132+00:00','keeper','vm','b4a84fdae5874f679780cf628f8c703f','add-opening','Add opening 0012','edit',NULL,5);
INSERT INTO "change_set" VALUES(3,'907ae057d93b4d269af4c256ea8f7a4f',2,'2026-11-28T06:58:29.148+00:00','keeper','vm','b4a84fdae5874f679780cf628f8c703f','add-opening','Add opening 9E4','edit',NULL,3);
INSERT INTO "change_set" VALUES(4,'30c30719b6b74cbc908384850df2c74a',3,'2026-11-28T06:58:29.161+00:00','keeper','vm','b4a84fdae5874f679780cf628f8c703f','add-item','Add existing item lock to 0012','edit',NULL,1);
INSERT INTO "change_set" VALUES(5,'3c16b5ab6e7a462a834b3786b4f426e5',4,'2026-11-28T06:58:29.172+00:00','keeper','vm','b4a84fdae5874f679780cf628f8c703f','choose-part','Choose C-1 as cylinder of 0012','edit',NULL,1);
INSERT INTO "change_set" VALUES(6,'9475feb53c7e41118c2c62abc0eb9a22',5,'2026-11-28T06:58:29.185+00:00','keeper','vm','b4a84fdae5874f679780cf628f8c703f','place-unit','Place the unit of 0012','edit',NULL,1);
INSERT INTO "change_set" VALUES(7,'2c69fdddbdae4dc48634e4f9a41c7aaf',6,'2026-11-28T06:58:29.193+00:00','keeper','vm','b4a84fdae5874f679780cf628f8c703f','define-field','Define field Key group','edit',NULL,1);
INSERT INTO "change_set" VALUES(8,'ba4b50aa839d4bd78fd5b63cb089071d',7,'2026-11-28T06:58:29.208+00:00','keeper','vm','b4a84fdae5874f679780cf628f8c703f','set-own-value','Set Key group','edit',NULL,1);
INSERT INTO "change_set" VALUES(9,'70b3026e62144e169e67774816f85f68',8,'2026-11-28T06:58:29.216+00:00','keeper','vm','b4a84fdae5874f679780cf628f8c703f','import-survey','Mapping','edit',NULL,1);
INSERT INTO "change_set" VALUES(10,'56b0f4eb6f96475b8668be70119801c5',9,'2026-11-28T06:58:29.234+00:00','keeper','vm','b4a84fdae5874f679780cf628f8c703f','fit','Fit','edit',NULL,1);
INSERT INTO "change_set" VALUES(11,'83658624fe9b414bb1c304934e2ab178',10,'2026-11-28T06:58:29.247+00:00','keeper','vm','b4a84fdae5874f679780cf628f8c703f','lay-supply','Power','edit',NULL,5);
INSERT INTO "change_set" VALUES(12,'c3b4a66e3bbe471ea43fc892c80d6306',11,'2026-11-28T06:58:29.260+00:00','keeper','vm','b4a84fdae5874f679780cf628f8c703f','make-set','Sets, waivers, packets','edit',NULL,5);
INSERT INTO "change_set" VALUES(13,'f81e053100874503a7fca35557dacefb',12,'2026-11-28T06:58:29.274+00:00','keeper','vm','b4a84fdae5874f679780cf628f8c703f','add-person','List keeper as specifier','edit',NULL,1);
INSERT INTO "change_set" VALUES(14,'b1e4da20a9e34f7098c0d5ea3ec2492c',13,'2026-11-28T06:58:29.287+00:00','keeper','vm','b4a84fdae5874f679780cf628f8c703f','edit-facts','Edit hand of 0012','edit',NULL,1);
INSERT INTO "change_set" VALUES(15,'dbdbf707dd4746b0adf041f9dc4e1015',14,'2026-11-28T06:58:29.312+00:00','keeper','vm','b4a84fdae5874f679780cf628f8c703f','edit-facts','Edit hand of 0012','edit',NULL,1);
INSERT INTO "change_set" VALUES(16,'e8ed2f224c3c4443a789f5e3c509688a',15,'2026-11-28T06:58:29.333+00:00','keeper','vm','b4a84fdae5874f679780cf628f8c703f','undo','Take back step 15: Edit hand of 0012','undo',15,1);
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
INSERT INTO "chosen_part" VALUES('e9fd21cd78f042e984e7865af0311752',1,'590680c57f10457197745d6e6c794452','cylinder','C-1',1.0);
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
INSERT INTO "circuit" VALUES('7d3f41a68806433b84630bbfbe5c5e75',1,'229231e6ab7d4137acce3f1da7b66350','A',NULL,NULL,NULL,NULL,'drops',NULL);
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
INSERT INTO "existing_item" VALUES('753bdb3a80dd47cbb6c1a02ed4709dcf',2,'590680c57f10457197745d6e6c794452',0,'lock',NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,69.85,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,'{"key_group":"AA"}');
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
INSERT INTO "hardware_set" VALUES('c0340209f53d49748a62576a107bc36f',1,'HS-1',NULL);
CREATE TABLE import_mapping (
	id TEXT NOT NULL, 
	version INTEGER DEFAULT 1 NOT NULL, 
	fingerprint TEXT NOT NULL, 
	name TEXT, 
	mapping TEXT DEFAULT '{}' NOT NULL, 
	CONSTRAINT pk_import_mapping PRIMARY KEY (id), 
	CONSTRAINT uq_import_mapping_fingerprint UNIQUE (fingerprint)
);
INSERT INTO "import_mapping" VALUES('cb9001b2a99040ab9e4bd1cd55149986',1,'f','Doors','{"Mark":"opening.mark"}');
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
INSERT INTO "issued_packet" VALUES('09cd33c8f9c040988041c316ba597dfd',1,'590680c57f10457197745d6e6c794452','2026-01-02','keeper','case');
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
INSERT INTO "kit_content" VALUES('2266195a99344c2995fb581a55456de3',1,'4c0adcd9334240f59dc09cda03e7aef1','S-1',2.0);
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
INSERT INTO "leaf" VALUES('de7fb6ddc6024527bb0a4a9aae690751',1,'590680c57f10457197745d6e6c794452',0,'active',NULL,NULL,NULL,NULL,NULL,NULL,NULL);
INSERT INTO "leaf" VALUES('8c7c4aa7266740aabb64a376b51b2ff7',1,'590680c57f10457197745d6e6c794452',1,'inactive',NULL,NULL,NULL,NULL,NULL,NULL,NULL);
INSERT INTO "leaf" VALUES('76973c8f23b24e7aa7d633f3de1512cf',1,'c5c807f461f44c73b269ade8719a61d2',0,'single',NULL,NULL,NULL,NULL,NULL,NULL,NULL);
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
INSERT INTO "level" VALUES('896ffb794cb34340a7bdce0bd247f948',1,'3c1e38033a9840bc83125f90eaf1a1eb','1',0,NULL);
INSERT INTO "level" VALUES('c5737278373d433fa6a0395d8ed34418',1,NULL,'roof',1,NULL);
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
INSERT INTO "opening" VALUES('590680c57f10457197745d6e6c794452',5,'896ffb794cb34340a7bdce0bd247f948','c0340209f53d49748a62576a107bc36f','0012',NULL,NULL,NULL,'LHR',NULL,1,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,'{}');
INSERT INTO "opening" VALUES('c5c807f461f44c73b269ade8719a61d2',1,'c5737278373d433fa6a0395d8ed34418',NULL,'9E4',NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,'{}');
CREATE TABLE opening_fit (
	id TEXT NOT NULL, 
	version INTEGER DEFAULT 1 NOT NULL, 
	case_key TEXT NOT NULL, 
	fit_key TEXT NOT NULL, 
	CONSTRAINT pk_opening_fit PRIMARY KEY (id), 
	CONSTRAINT fk_opening_fit_id FOREIGN KEY(id) REFERENCES opening (id), 
	CONSTRAINT fk_opening_fit_fit_key FOREIGN KEY(fit_key) REFERENCES fit_content ("key")
);
INSERT INTO "opening_fit" VALUES('590680c57f10457197745d6e6c794452',1,'case','a8e0ba654ce651dc312b81ee49fe54ecc3d8f326dcb8086581341823c2ed4139');
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
INSERT INTO "own_field" VALUES('1cace4a5825a4ca1928602768cabe4ec',1,'existing_item','key_group','Key group','choice','','["AA","BB"]');
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
INSERT INTO "part" VALUES('4c0adcd9334240f59dc09cda03e7aef1',1,'C-1','mortise-cylinder',NULL,NULL,NULL,'EA',NULL,NULL,NULL,NULL,NULL,'{}','{}');
INSERT INTO "part" VALUES('4190b6add211451c9641b8590d256aed',1,'U-1','surface-unit',NULL,NULL,NULL,'EA',NULL,NULL,NULL,NULL,NULL,'{}','{}');
CREATE TABLE person (
	id TEXT NOT NULL, 
	version INTEGER DEFAULT 1 NOT NULL, 
	name TEXT NOT NULL, 
	role TEXT NOT NULL, 
	CONSTRAINT pk_person PRIMARY KEY (id), 
	CONSTRAINT uq_person_name UNIQUE (name)
);
INSERT INTO "person" VALUES('acb4d96c7b6c4e1e8603026d9115f5ea',1,'keeper','specifier');
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
INSERT INTO "placed_unit" VALUES('4f80192063a4447d9f9da5d8abb05d6c',1,'590680c57f10457197745d6e6c794452','active','secured','above',20.0,1100.0);
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
INSERT INTO "project" VALUES('8d631242dd924c3e959d274130240150',1,'Saved yard','2026-11-28T06:58:28+00:00','mm','mm','{}');
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
INSERT INTO "route" VALUES('d5aef2971291447fb646512c76876852',1,'590680c57f10457197745d6e6c794452','229231e6ab7d4137acce3f1da7b66350',6.0,1);
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
INSERT INTO "run" VALUES('6e9eb17cd99c4c06a8d26926f0977eab',1,'7d3f41a68806433b84630bbfbe5c5e75',NULL,'supply','J1',NULL,NULL,NULL,NULL,NULL,NULL);
INSERT INTO "run" VALUES('bfba703dc9a9459090199c4c643e2f65',1,'7d3f41a68806433b84630bbfbe5c5e75','590680c57f10457197745d6e6c794452','J1','590680c57f10457197745d6e6c794452',4.0,NULL,'18 AWG','solid',NULL,NULL);
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
INSERT INTO "set_line" VALUES('48f326203f15409383282c6e675e1d2b',1,'c0340209f53d49748a62576a107bc36f','unit','U-1',1.0);
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
INSERT INTO "supply" VALUES('229231e6ab7d4137acce3f1da7b66350',1,NULL,'Closet',NULL,2.5,NULL,NULL,NULL,'laid',NULL,NULL,NULL,NULL,NULL);
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
INSERT INTO "waiver" VALUES('30a557ea4d994c51b7fce2598332d578',1,'590680c57f10457197745d6e6c794452','hand-known','','opening','f','keeper','seen','2026-01-02',NULL);
CREATE INDEX ix_change_set_who_number ON change_set (who, number);
CREATE INDEX ix_change_set_target ON change_set (target);
CREATE INDEX ix_level_building_id ON level (building_id);
CREATE INDEX ix_change_entry_row_id_change_set ON change_entry (row_id, change_set);
CREATE INDEX ix_change_entry_opening_id_change_set ON change_entry (opening_id, change_set);
CREATE INDEX ix_opening_set_id ON opening (set_id);
CREATE INDEX ix_opening_level_id ON opening (level_id);
CREATE INDEX ix_supply_level_id ON supply (level_id);
CREATE INDEX ix_leaf_opening_id ON leaf (opening_id);
CREATE INDEX ix_existing_item_opening_id ON existing_item (opening_id);
CREATE INDEX ix_waiver_opening_id ON waiver (opening_id);
CREATE INDEX ix_run_circuit_id ON run (circuit_id);
CREATE INDEX ix_run_opening_id ON run (opening_id);
COMMIT;
