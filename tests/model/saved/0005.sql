BEGIN TRANSACTION;
CREATE TABLE alembic_version (version_num VARCHAR(32) NOT NULL, CONSTRAINT alembic_version_pkc PRIMARY KEY (version_num));
INSERT INTO "alembic_version" VALUES('0005');
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
INSERT INTO "assigned_part" VALUES('fa99e870a4d64881978d9bb6f76c57d5',1,'69a3c50b1e8841d9b48214f427076ce7','69a3c50b1e8841d9b48214f427076ce7','cylinder','C-1',1,1.0,'by-hand','SN-1',NULL,'planned');
CREATE TABLE building (
	id TEXT NOT NULL, 
	version INTEGER DEFAULT 1 NOT NULL, 
	name TEXT NOT NULL, 
	CONSTRAINT pk_building PRIMARY KEY (id), 
	CONSTRAINT uq_building_name UNIQUE (name)
);
INSERT INTO "building" VALUES('c11cd0e4e7234d21a73687c617172630',1,'Mill');
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
INSERT INTO "change_entry" VALUES(1,0,'part','b9dde9723cbb499993c9bff709a2cdab',NULL,'insert',NULL,'{"currency":"USD","id":"b9dde9723cbb499993c9bff709a2cdab","kind":"mortise-cylinder","list_price":"12.1","number":"C-1","unit":"EA","version":1}','test');
INSERT INTO "change_entry" VALUES(1,1,'part','1ec879408cd64534a7ab1e6044e98a0a',NULL,'insert',NULL,'{"id":"1ec879408cd64534a7ab1e6044e98a0a","kind":"surface-unit","number":"U-1","unit":"EA","version":1}','test');
INSERT INTO "change_entry" VALUES(1,2,'kit_content','d73de7807ecc4042a7376319e7aae7d5',NULL,'insert',NULL,'{"id":"d73de7807ecc4042a7376319e7aae7d5","number":"S-1","part_id":"b9dde9723cbb499993c9bff709a2cdab","quantity":2.0,"version":1}','test');
INSERT INTO "change_entry" VALUES(2,0,'building','c11cd0e4e7234d21a73687c617172630',NULL,'insert',NULL,'{"id":"c11cd0e4e7234d21a73687c617172630","name":"Mill","version":1}',NULL);
INSERT INTO "change_entry" VALUES(2,1,'level','2b9ea00355f4403d8dd95d1bfe25193f',NULL,'insert',NULL,'{"building_id":"c11cd0e4e7234d21a73687c617172630","id":"2b9ea00355f4403d8dd95d1bfe25193f","name":"1","sort":0,"version":1}',NULL);
INSERT INTO "change_entry" VALUES(2,2,'opening','69a3c50b1e8841d9b48214f427076ce7','69a3c50b1e8841d9b48214f427076ce7','insert',NULL,'{"id":"69a3c50b1e8841d9b48214f427076ce7","level_id":"2b9ea00355f4403d8dd95d1bfe25193f","mark":"0012","stair":true,"version":1}','added by keeper');
INSERT INTO "change_entry" VALUES(2,3,'leaf','3c76a1fb1bee44e1a77371d0bc3d039e','69a3c50b1e8841d9b48214f427076ce7','insert',NULL,'{"id":"3c76a1fb1bee44e1a77371d0bc3d039e","opening_id":"69a3c50b1e8841d9b48214f427076ce7","ordinal":0,"position":"active","version":1}','added by keeper');
INSERT INTO "change_entry" VALUES(2,4,'leaf','ac9515d0f63f4e498047019b6d0a0e42','69a3c50b1e8841d9b48214f427076ce7','insert',NULL,'{"id":"ac9515d0f63f4e498047019b6d0a0e42","opening_id":"69a3c50b1e8841d9b48214f427076ce7","ordinal":1,"position":"inactive","version":1}','added by keeper');
INSERT INTO "change_entry" VALUES(2,5,'lock_point','69a3c50b1e8841d9b48214f427076ce7','69a3c50b1e8841d9b48214f427076ce7','insert',NULL,'{"id":"69a3c50b1e8841d9b48214f427076ce7","opening_id":"69a3c50b1e8841d9b48214f427076ce7","version":1}',NULL);
INSERT INTO "change_entry" VALUES(3,0,'level','84f3269d1637451590e92c8f925a38cc',NULL,'insert',NULL,'{"id":"84f3269d1637451590e92c8f925a38cc","name":"roof","sort":1,"version":1}',NULL);
INSERT INTO "change_entry" VALUES(3,1,'opening','4f7827190d274bc18f6671781ff5d42a','4f7827190d274bc18f6671781ff5d42a','insert',NULL,'{"id":"4f7827190d274bc18f6671781ff5d42a","level_id":"84f3269d1637451590e92c8f925a38cc","mark":"9E4","version":1}','added by keeper');
INSERT INTO "change_entry" VALUES(3,2,'leaf','1d3224a60627472692b9c8c0490e210e','4f7827190d274bc18f6671781ff5d42a','insert',NULL,'{"id":"1d3224a60627472692b9c8c0490e210e","opening_id":"4f7827190d274bc18f6671781ff5d42a","ordinal":0,"position":"single","version":1}','added by keeper');
INSERT INTO "change_entry" VALUES(3,3,'lock_point','4f7827190d274bc18f6671781ff5d42a','4f7827190d274bc18f6671781ff5d42a','insert',NULL,'{"id":"4f7827190d274bc18f6671781ff5d42a","opening_id":"4f7827190d274bc18f6671781ff5d42a","version":1}',NULL);
INSERT INTO "change_entry" VALUES(4,0,'existing_item','8261b5052e3d4306beacfa1ad9855581','69a3c50b1e8841d9b48214f427076ce7','insert',NULL,'{"backset_mm":69.85,"id":"8261b5052e3d4306beacfa1ad9855581","kind":"lock","opening_id":"69a3c50b1e8841d9b48214f427076ce7","ordinal":0,"version":1}','added by keeper');
INSERT INTO "change_entry" VALUES(4,1,'lock_point','69a3c50b1e8841d9b48214f427076ce7','69a3c50b1e8841d9b48214f427076ce7','update','{"item_id":null}','{"item_id":"8261b5052e3d4306beacfa1ad9855581"}',NULL);
INSERT INTO "change_entry" VALUES(5,0,'chosen_part','a862b11e385941dbb6c46abb107d68a4','69a3c50b1e8841d9b48214f427076ce7','insert',NULL,'{"id":"a862b11e385941dbb6c46abb107d68a4","lock_point_id":"69a3c50b1e8841d9b48214f427076ce7","opening_id":"69a3c50b1e8841d9b48214f427076ce7","part":"C-1","quantity":1.0,"role":"cylinder","version":1}',NULL);
INSERT INTO "change_entry" VALUES(6,0,'placed_unit','9ac19de9adc1415ba67b17b0b3db93c3','69a3c50b1e8841d9b48214f427076ce7','insert',NULL,'{"face":"secured","id":"9ac19de9adc1415ba67b17b0b3db93c3","leaf":"active","lock_point_id":"69a3c50b1e8841d9b48214f427076ce7","opening_id":"69a3c50b1e8841d9b48214f427076ce7","pattern":"above","version":1,"x_mm":20.0,"y_mm":1100.0}',NULL);
INSERT INTO "change_entry" VALUES(7,0,'own_field','bd4f75ff4ce14f88ba9ca4b63d574dc9',NULL,'insert',NULL,'{"choices":["AA","BB"],"entity":"existing_item","id":"bd4f75ff4ce14f88ba9ca4b63d574dc9","kind":"choice","label":"Key group","name":"key_group","unit":"","version":1}',NULL);
INSERT INTO "change_entry" VALUES(8,0,'existing_item','8261b5052e3d4306beacfa1ad9855581','69a3c50b1e8841d9b48214f427076ce7','update','{"extra":{}}','{"extra":{"key_group":"AA"}}','edited by keeper');
INSERT INTO "change_entry" VALUES(9,0,'import_mapping','feac0c92a17046dfa1cf04a7f27f80f0',NULL,'insert',NULL,'{"fingerprint":"f","id":"feac0c92a17046dfa1cf04a7f27f80f0","mapping":{"Mark":"opening.mark"},"name":"Doors","version":1}',NULL);
INSERT INTO "change_entry" VALUES(10,0,'opening_fit','69a3c50b1e8841d9b48214f427076ce7','69a3c50b1e8841d9b48214f427076ce7','insert',NULL,'{"case_key":"case","fit_key":"a8e0ba654ce651dc312b81ee49fe54ecc3d8f326dcb8086581341823c2ed4139","id":"69a3c50b1e8841d9b48214f427076ce7","opening_id":"69a3c50b1e8841d9b48214f427076ce7","version":1}',NULL);
INSERT INTO "change_entry" VALUES(11,0,'supply','54dc186dd8d44e41b5169412802611a8',NULL,'insert',NULL,'{"id":"54dc186dd8d44e41b5169412802611a8","name":"Closet","use":"laid","version":1,"x_m":2.5}',NULL);
INSERT INTO "change_entry" VALUES(11,1,'circuit','d454de3d6c4e4316ad243175c2be0f57',NULL,'insert',NULL,'{"alarm":"drops","id":"d454de3d6c4e4316ad243175c2be0f57","name":"A","supply_id":"54dc186dd8d44e41b5169412802611a8","version":1}',NULL);
INSERT INTO "change_entry" VALUES(11,2,'run','f0b1fb05c76446f08c2066de22321e76',NULL,'insert',NULL,'{"circuit_id":"d454de3d6c4e4316ad243175c2be0f57","from_node":"supply","id":"f0b1fb05c76446f08c2066de22321e76","to_node":"J1","version":1}',NULL);
INSERT INTO "change_entry" VALUES(11,3,'run','840bc6689fb742d19cfb786b365167b5','69a3c50b1e8841d9b48214f427076ce7','insert',NULL,'{"circuit_id":"d454de3d6c4e4316ad243175c2be0f57","from_node":"J1","gauge":"18 AWG","id":"840bc6689fb742d19cfb786b365167b5","length_m":4.0,"opening_id":"69a3c50b1e8841d9b48214f427076ce7","stranding":"solid","to_node":"69a3c50b1e8841d9b48214f427076ce7","version":1}',NULL);
INSERT INTO "change_entry" VALUES(11,4,'route','727a974eb0324dbfa7df70603913683a','69a3c50b1e8841d9b48214f427076ce7','insert',NULL,'{"id":"727a974eb0324dbfa7df70603913683a","length_m":6.0,"opening_id":"69a3c50b1e8841d9b48214f427076ce7","pinned":true,"supply_id":"54dc186dd8d44e41b5169412802611a8","version":1}',NULL);
INSERT INTO "change_entry" VALUES(12,0,'hardware_set','296df60839f14f3abba450da014d19c3',NULL,'insert',NULL,'{"id":"296df60839f14f3abba450da014d19c3","name":"HS-1","version":1}',NULL);
INSERT INTO "change_entry" VALUES(12,1,'set_line','0c8e80e1253d4fa6806fa68eded0b069',NULL,'insert',NULL,'{"id":"0c8e80e1253d4fa6806fa68eded0b069","part":"U-1","quantity":1.0,"role":"unit","set_id":"296df60839f14f3abba450da014d19c3","version":1}',NULL);
INSERT INTO "change_entry" VALUES(12,2,'opening','69a3c50b1e8841d9b48214f427076ce7','69a3c50b1e8841d9b48214f427076ce7','update','{"set_id":null}','{"set_id":"296df60839f14f3abba450da014d19c3"}',NULL);
INSERT INTO "change_entry" VALUES(12,3,'waiver','703e30048e544f5c9bb4c0d77d0b12b6','69a3c50b1e8841d9b48214f427076ce7','insert',NULL,'{"about":"","facts":"f","given_on":"2026-01-02","id":"703e30048e544f5c9bb4c0d77d0b12b6","opening_id":"69a3c50b1e8841d9b48214f427076ce7","person":"keeper","reason":"seen","rule":"hand-known","scope":"opening","version":1}',NULL);
INSERT INTO "change_entry" VALUES(12,4,'issued_packet','f5fc881b35fd414083a11b21f39c8ea7','69a3c50b1e8841d9b48214f427076ce7','insert',NULL,'{"at":"2026-01-02","by":"keeper","case_key":"case","id":"f5fc881b35fd414083a11b21f39c8ea7","opening_id":"69a3c50b1e8841d9b48214f427076ce7","version":1}',NULL);
INSERT INTO "change_entry" VALUES(13,0,'assigned_part','fa99e870a4d64881978d9bb6f76c57d5','69a3c50b1e8841d9b48214f427076ce7','insert',NULL,'{"id":"fa99e870a4d64881978d9bb6f76c57d5","lock_point_id":"69a3c50b1e8841d9b48214f427076ce7","opening_id":"69a3c50b1e8841d9b48214f427076ce7","part":"C-1","piece":1,"quantity":1.0,"role":"cylinder","serial":"SN-1","source":"by-hand","state":"planned","version":1}',NULL);
INSERT INTO "change_entry" VALUES(14,0,'person','c10071a9cc704ac1a25c1a0799aabf6d',NULL,'insert',NULL,'{"id":"c10071a9cc704ac1a25c1a0799aabf6d","name":"keeper","role":"specifier","version":1}',NULL);
INSERT INTO "change_entry" VALUES(15,0,'opening','69a3c50b1e8841d9b48214f427076ce7','69a3c50b1e8841d9b48214f427076ce7','update','{"hand":null}','{"hand":"LHR"}','edited by keeper');
INSERT INTO "change_entry" VALUES(16,0,'opening','69a3c50b1e8841d9b48214f427076ce7','69a3c50b1e8841d9b48214f427076ce7','update','{"hand":"LHR"}','{"hand":"RH"}','edited by keeper');
INSERT INTO "change_entry" VALUES(17,0,'opening','69a3c50b1e8841d9b48214f427076ce7','69a3c50b1e8841d9b48214f427076ce7','update','{"hand":"RH"}','{"hand":"LHR"}',NULL);
CREATE TABLE change_reference (
	row_id TEXT NOT NULL, 
	change_set INTEGER NOT NULL, 
	CONSTRAINT pk_change_reference PRIMARY KEY (row_id, change_set), 
	CONSTRAINT fk_change_reference_change_set FOREIGN KEY(change_set) REFERENCES change_set (number)
);
INSERT INTO "change_reference" VALUES('b9dde9723cbb499993c9bff709a2cdab',1);
INSERT INTO "change_reference" VALUES('2b9ea00355f4403d8dd95d1bfe25193f',2);
INSERT INTO "change_reference" VALUES('c11cd0e4e7234d21a73687c617172630',2);
INSERT INTO "change_reference" VALUES('84f3269d1637451590e92c8f925a38cc',3);
INSERT INTO "change_reference" VALUES('8261b5052e3d4306beacfa1ad9855581',4);
INSERT INTO "change_reference" VALUES('69a3c50b1e8841d9b48214f427076ce7',5);
INSERT INTO "change_reference" VALUES('69a3c50b1e8841d9b48214f427076ce7',6);
INSERT INTO "change_reference" VALUES('69a3c50b1e8841d9b48214f427076ce7',10);
INSERT INTO "change_reference" VALUES('54dc186dd8d44e41b5169412802611a8',11);
INSERT INTO "change_reference" VALUES('d454de3d6c4e4316ad243175c2be0f57',11);
INSERT INTO "change_reference" VALUES('296df60839f14f3abba450da014d19c3',12);
INSERT INTO "change_reference" VALUES('69a3c50b1e8841d9b48214f427076ce7',13);
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
INSERT INTO "change_set" VALUES(1,'9c167848cec344cabe5b8a6bd0c8ad0a',0,'2026-11-28T08:12:03.974+00:00','keeper','vm','8f825a3b60c142a0b4675c9b95f59dd7','import-catalogue','Catalogue','edit',NULL,3);
INSERT INTO "change_set" VALUES(2,'fa03ba89842149a88114c883ccca844f',1,'2026-11-28T08:12:03.999+00:00','keeper','vm','8f825a3b60c142a0b4675c9b95f59dd7','add-opening','Add opening 0012','edit',NULL,6);
INSERT INTO "change_set" VALUES(3,'f568b62147154110a12aae80c4338846',2,'2026-11-28T08:12:04.034+00:00','keeper','vm','8f825a3b60c142a0b4675c9b95f59dd7','add-opening','Add opening 9E4','edit',NULL,4);
INSERT INTO "change_set" VALUES(4,'3e48fc29bb9446f0b46a99736fec1671',3,'2026-11-28T08:12:04.051+00:00','keeper','vm','8f825a3b60c142a0b4675c9b95f59dd7','add-item','Add existing item lock to 0012','edit',NULL,2);
INSERT INTO "change_set" VALUES(5,'f515a95ed853409eb9a3db05136c4db9',4,'2026-11-28T08:12:04.070+00:00','keeper','vm','8f825a3b60c142a0b4675c9b95f59dd7','choose-part','Choose C-1 as cylinder of 0012','edit',NULL,1);
INSERT INTO "change_set" VALUES(6,'6adb6cdf96b646ccbd6612975e1c27ac',5,'2026-11-28T08:12:04.077+00:00','keeper','vm','8f825a3b60c142a0b4675c9b95f59dd7','place-unit','Place the unit of 0012','edit',NULL,1);
INSERT INTO "change_set" VALUES(7,'6c4292931eab417e843841dbcceccab8',6,'2026-11-28T08:12:04.090+00:00','keeper','vm','8f825a3b60c142a0b4675c9b95f59dd7','define-field','Define field Key group','edit',NULL,1);
INSERT INTO "change_set" VALUES(8,'c9fe0cfd1161407ca000ca743fd1d1a7',7,'2026-11-28T08:12:04.100+00:00','keeper','vm','8f825a3b60c142a0b4675c9b95f59dd7','set-own-value','Set Key group','edit',NULL,1);
INSERT INTO "change_set" VALUES(9,'e8f83e097f4f4be5ae3859d21cf19b88',8,'2026-11-28T08:12:04.114+00:00','keeper','vm','8f825a3b60c142a0b4675c9b95f59dd7','import-survey','Mapping','edit',NULL,1);
INSERT INTO "change_set" VALUES(10,'913270c9385d4411aeea349f09aaeb71',9,'2026-11-28T08:12:04.124+00:00','keeper','vm','8f825a3b60c142a0b4675c9b95f59dd7','fit','Fit','edit',NULL,1);
INSERT INTO "change_set" VALUES(11,'dd2bf1ce6b144c82aa9000fe761d97ea',10,'2026-11-28T08:12:04.138+00:00','keeper','vm','8f825a3b60c142a0b4675c9b95f59dd7','lay-supply','Power','edit',NULL,5);
INSERT INTO "change_set" VALUES(12,'b761d7d39bd64198aff43e3ab57a29fc',11,'2026-11-28T08:12:04.158+00:00','keeper','vm','8f825a3b60c142a0b4675c9b95f59dd7','make-set','Sets, waivers, packets','edit',NULL,5);
INSERT INTO "change_set" VALUES(13,'0c683e6421a144a083e0e4e4272e5fbd',12,'2026-11-28T08:12:04.176+00:00','keeper','vm','8f825a3b60c142a0b4675c9b95f59dd7','record-piece','Pieces','edit',NULL,1);
INSERT INTO "change_set" VALUES(14,'d405b8afb0064741b3047acd27a34b2d',13,'2026-11-28T08:12:04.190+00:00','keeper','vm','8f825a3b60c142a0b4675c9b95f59dd7','add-person','List keeper as specifier','edit',NULL,1);
INSERT INTO "change_set" VALUES(15,'5e7b258e8f4246f1ab7f548d3eeb7931',14,'2026-11-28T08:12:04.203+00:00','keeper','vm','8f825a3b60c142a0b4675c9b95f59dd7','edit-facts','Edit hand of 0012','edit',NULL,1);
INSERT INTO "change_set" VALUES(16,'118a63d9268e4b969bddff1d06bf7f22',15,'2026-11-28T08:12:04.210+00:00','keeper','vm','8f825a3b60c142a0b4675c9b95f59dd7','edit-facts','Edit hand of 0012','edit',NULL,1);
INSERT INTO "change_set" VALUES(17,'e16b47049d2b47bc921752b46a6cf035',16,'2026-11-28T08:12:04.232+00:00','keeper','vm','8f825a3b60c142a0b4675c9b95f59dd7','undo','Take back step 16: Edit hand of 0012','undo',16,1);
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
INSERT INTO "chosen_part" VALUES('a862b11e385941dbb6c46abb107d68a4',1,'69a3c50b1e8841d9b48214f427076ce7','69a3c50b1e8841d9b48214f427076ce7','cylinder','C-1',1.0);
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
INSERT INTO "circuit" VALUES('d454de3d6c4e4316ad243175c2be0f57',1,'54dc186dd8d44e41b5169412802611a8','A',NULL,NULL,NULL,NULL,'drops',NULL);
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
INSERT INTO "existing_item" VALUES('8261b5052e3d4306beacfa1ad9855581',2,'69a3c50b1e8841d9b48214f427076ce7',0,'lock',NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,69.85,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,'{"key_group":"AA"}');
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
INSERT INTO "hardware_set" VALUES('296df60839f14f3abba450da014d19c3',1,'HS-1',NULL);
CREATE TABLE import_mapping (
	id TEXT NOT NULL, 
	version INTEGER DEFAULT 1 NOT NULL, 
	fingerprint TEXT NOT NULL, 
	name TEXT, 
	mapping TEXT DEFAULT '{}' NOT NULL, 
	CONSTRAINT pk_import_mapping PRIMARY KEY (id), 
	CONSTRAINT uq_import_mapping_fingerprint UNIQUE (fingerprint)
);
INSERT INTO "import_mapping" VALUES('feac0c92a17046dfa1cf04a7f27f80f0',1,'f','Doors','{"Mark":"opening.mark"}');
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
INSERT INTO "issued_packet" VALUES('f5fc881b35fd414083a11b21f39c8ea7',1,'69a3c50b1e8841d9b48214f427076ce7','2026-01-02','keeper','case');
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
INSERT INTO "kit_content" VALUES('d73de7807ecc4042a7376319e7aae7d5',1,'b9dde9723cbb499993c9bff709a2cdab','S-1',2.0);
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
INSERT INTO "leaf" VALUES('3c76a1fb1bee44e1a77371d0bc3d039e',1,'69a3c50b1e8841d9b48214f427076ce7',0,'active',NULL,NULL,NULL,NULL,NULL,NULL,NULL);
INSERT INTO "leaf" VALUES('ac9515d0f63f4e498047019b6d0a0e42',1,'69a3c50b1e8841d9b48214f427076ce7',1,'inactive',NULL,NULL,NULL,NULL,NULL,NULL,NULL);
INSERT INTO "leaf" VALUES('1d3224a60627472692b9c8c0490e210e',1,'4f7827190d274bc18f6671781ff5d42a',0,'single',NULL,NULL,NULL,NULL,NULL,NULL,NULL);
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
INSERT INTO "level" VALUES('2b9ea00355f4403d8dd95d1bfe25193f',1,'c11cd0e4e7234d21a73687c617172630','1',0,NULL);
INSERT INTO "level" VALUES('84f3269d1637451590e92c8f925a38cc',1,NULL,'roof',1,NULL);
CREATE TABLE lock_point (
	id TEXT NOT NULL, 
	version INTEGER DEFAULT 1 NOT NULL, 
	opening_id TEXT NOT NULL, 
	item_id TEXT, 
	CONSTRAINT pk_lock_point PRIMARY KEY (id), 
	CONSTRAINT fk_lock_point_opening_id FOREIGN KEY(opening_id) REFERENCES opening (id), 
	CONSTRAINT fk_lock_point_item_id FOREIGN KEY(item_id) REFERENCES existing_item (id) DEFERRABLE INITIALLY DEFERRED
);
INSERT INTO "lock_point" VALUES('69a3c50b1e8841d9b48214f427076ce7',2,'69a3c50b1e8841d9b48214f427076ce7','8261b5052e3d4306beacfa1ad9855581');
INSERT INTO "lock_point" VALUES('4f7827190d274bc18f6671781ff5d42a',1,'4f7827190d274bc18f6671781ff5d42a',NULL);
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
INSERT INTO "opening" VALUES('69a3c50b1e8841d9b48214f427076ce7',5,'2b9ea00355f4403d8dd95d1bfe25193f','296df60839f14f3abba450da014d19c3','0012',NULL,NULL,NULL,'LHR',NULL,1,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,'{}');
INSERT INTO "opening" VALUES('4f7827190d274bc18f6671781ff5d42a',1,'84f3269d1637451590e92c8f925a38cc',NULL,'9E4',NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,'{}');
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
INSERT INTO "opening_fit" VALUES('69a3c50b1e8841d9b48214f427076ce7',1,'69a3c50b1e8841d9b48214f427076ce7','case','a8e0ba654ce651dc312b81ee49fe54ecc3d8f326dcb8086581341823c2ed4139');
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
INSERT INTO "own_field" VALUES('bd4f75ff4ce14f88ba9ca4b63d574dc9',1,'existing_item','key_group','Key group','choice','','["AA","BB"]');
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
INSERT INTO "part" VALUES('b9dde9723cbb499993c9bff709a2cdab',1,'C-1','mortise-cylinder',NULL,NULL,NULL,'EA','12.1','USD',NULL,NULL,NULL,'{}','{}');
INSERT INTO "part" VALUES('1ec879408cd64534a7ab1e6044e98a0a',1,'U-1','surface-unit',NULL,NULL,NULL,'EA',NULL,NULL,NULL,NULL,NULL,'{}','{}');
CREATE TABLE person (
	id TEXT NOT NULL, 
	version INTEGER DEFAULT 1 NOT NULL, 
	name TEXT NOT NULL, 
	role TEXT NOT NULL, 
	CONSTRAINT pk_person PRIMARY KEY (id), 
	CONSTRAINT uq_person_name UNIQUE (name)
);
INSERT INTO "person" VALUES('c10071a9cc704ac1a25c1a0799aabf6d',1,'keeper','specifier');
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
INSERT INTO "placed_unit" VALUES('9ac19de9adc1415ba67b17b0b3db93c3',1,'69a3c50b1e8841d9b48214f427076ce7','69a3c50b1e8841d9b48214f427076ce7','active','secured','above',20.0,1100.0);
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
INSERT INTO "project" VALUES('0205e0739bf3499eaf69231ab38a887f',1,'Saved yard','2026-11-28T08:12:03+00:00','mm','mm','{}');
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
INSERT INTO "route" VALUES('727a974eb0324dbfa7df70603913683a',1,'69a3c50b1e8841d9b48214f427076ce7','54dc186dd8d44e41b5169412802611a8',6.0,1);
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
INSERT INTO "run" VALUES('f0b1fb05c76446f08c2066de22321e76',1,'d454de3d6c4e4316ad243175c2be0f57',NULL,'supply','J1',NULL,NULL,NULL,NULL,NULL,NULL);
INSERT INTO "run" VALUES('840bc6689fb742d19cfb786b365167b5',1,'d454de3d6c4e4316ad243175c2be0f57','69a3c50b1e8841d9b48214f427076ce7','J1','69a3c50b1e8841d9b48214f427076ce7',4.0,NULL,'18 AWG','solid',NULL,NULL);
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
INSERT INTO "set_line" VALUES('0c8e80e1253d4fa6806fa68eded0b069',1,'296df60839f14f3abba450da014d19c3','unit','U-1',1.0);
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
INSERT INTO "supply" VALUES('54dc186dd8d44e41b5169412802611a8',1,NULL,'Closet',NULL,2.5,NULL,NULL,NULL,'laid',NULL,NULL,NULL,NULL,NULL);
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
INSERT INTO "waiver" VALUES('703e30048e544f5c9bb4c0d77d0b12b6',1,'69a3c50b1e8841d9b48214f427076ce7','hand-known','','opening','f','keeper','seen','2026-01-02',NULL);
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
