BEGIN TRANSACTION;
CREATE TABLE alembic_version (version_num VARCHAR(32) NOT NULL, CONSTRAINT alembic_version_pkc PRIMARY KEY (version_num));
INSERT INTO "alembic_version" VALUES('0007');
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
INSERT INTO "assigned_part" VALUES('41ab8365d6bb4b3ab1806695c8c3e4c3',1,'2bd0639c3a6f457bb4468ffcc84d6b42','2bd0639c3a6f457bb4468ffcc84d6b42','cylinder','C-1',1,1.0,'by-hand','SN-1',NULL,'planned');
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
INSERT INTO "attachment" VALUES('29100852106c48c8a2c1fbd025d41305',1,'opening','2bd0639c3a6f457bb4468ffcc84d6b42','2bd0639c3a6f457bb4468ffcc84d6b42','508b7b1f113fdf173660d2b3dace45039a6d28f00ee27382c04c93af8213e4c9','inside.txt','Inside',NULL,0);
CREATE TABLE blob (
	hash TEXT NOT NULL, 
	size INTEGER NOT NULL, 
	media_type TEXT NOT NULL, 
	content BLOB NOT NULL, 
	CONSTRAINT pk_blob PRIMARY KEY (hash)
);
INSERT INTO "blob" VALUES('508b7b1f113fdf173660d2b3dace45039a6d28f00ee27382c04c93af8213e4c9',16,'text/plain',X'7365656E2066726F6D20696E73696465');
CREATE TABLE building (
	id TEXT NOT NULL, 
	version INTEGER DEFAULT 1 NOT NULL, 
	name TEXT NOT NULL, 
	CONSTRAINT pk_building PRIMARY KEY (id), 
	CONSTRAINT uq_building_name UNIQUE (name)
);
INSERT INTO "building" VALUES('e7dc6fe6717b40f68cb4aeb0a098522d',1,'Mill');
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
INSERT INTO "change_entry" VALUES(1,0,'part','773b60e33f8c4ea0aabac239e960d49b',NULL,'insert',NULL,'{"currency":"USD","id":"773b60e33f8c4ea0aabac239e960d49b","kind":"mortise-cylinder","list_price":"12.1","number":"C-1","unit":"EA","version":1}','test');
INSERT INTO "change_entry" VALUES(1,1,'part','37df1cc282254cba870a36ea5448bf01',NULL,'insert',NULL,'{"id":"37df1cc282254cba870a36ea5448bf01","kind":"surface-unit","number":"U-1","unit":"EA","version":1}','test');
INSERT INTO "change_entry" VALUES(1,2,'kit_content','4303b04051a244b19bebe41f2cc37cf8',NULL,'insert',NULL,'{"id":"4303b04051a244b19bebe41f2cc37cf8","number":"S-1","part_id":"773b60e33f8c4ea0aabac239e960d49b","quantity":2.0,"version":1}','test');
INSERT INTO "change_entry" VALUES(2,0,'building','e7dc6fe6717b40f68cb4aeb0a098522d',NULL,'insert',NULL,'{"id":"e7dc6fe6717b40f68cb4aeb0a098522d","name":"Mill","version":1}',NULL);
INSERT INTO "change_entry" VALUES(2,1,'level','a3a7d6b5fea24d27be9737b02aa2122c',NULL,'insert',NULL,'{"building_id":"e7dc6fe6717b40f68cb4aeb0a098522d","id":"a3a7d6b5fea24d27be9737b02aa2122c","name":"1","sort":0,"version":1}',NULL);
INSERT INTO "change_entry" VALUES(2,2,'opening','2bd0639c3a6f457bb4468ffcc84d6b42','2bd0639c3a6f457bb4468ffcc84d6b42','insert',NULL,'{"id":"2bd0639c3a6f457bb4468ffcc84d6b42","level_id":"a3a7d6b5fea24d27be9737b02aa2122c","mark":"0012","stair":true,"version":1}','added by keeper');
INSERT INTO "change_entry" VALUES(2,3,'leaf','85b763f8706447029f283ee250895c2d','2bd0639c3a6f457bb4468ffcc84d6b42','insert',NULL,'{"id":"85b763f8706447029f283ee250895c2d","opening_id":"2bd0639c3a6f457bb4468ffcc84d6b42","ordinal":0,"position":"active","version":1}','added by keeper');
INSERT INTO "change_entry" VALUES(2,4,'leaf','8cd6f92057ec4691aa1af4c3d74b613e','2bd0639c3a6f457bb4468ffcc84d6b42','insert',NULL,'{"id":"8cd6f92057ec4691aa1af4c3d74b613e","opening_id":"2bd0639c3a6f457bb4468ffcc84d6b42","ordinal":1,"position":"inactive","version":1}','added by keeper');
INSERT INTO "change_entry" VALUES(2,5,'lock_point','2bd0639c3a6f457bb4468ffcc84d6b42','2bd0639c3a6f457bb4468ffcc84d6b42','insert',NULL,'{"id":"2bd0639c3a6f457bb4468ffcc84d6b42","opening_id":"2bd0639c3a6f457bb4468ffcc84d6b42","version":1}',NULL);
INSERT INTO "change_entry" VALUES(3,0,'level','443f61c573e04fd1aa4a1a9d2eb48519',NULL,'insert',NULL,'{"id":"443f61c573e04fd1aa4a1a9d2eb48519","name":"roof","sort":1,"version":1}',NULL);
INSERT INTO "change_entry" VALUES(3,1,'opening','57c0667252834a308522421936e90408','57c0667252834a308522421936e90408','insert',NULL,'{"id":"57c0667252834a308522421936e90408","level_id":"443f61c573e04fd1aa4a1a9d2eb48519","mark":"9E4","version":1}','added by keeper');
INSERT INTO "change_entry" VALUES(3,2,'leaf','771beaea4b45467bb24b668a38e9d811','57c0667252834a308522421936e90408','insert',NULL,'{"id":"771beaea4b45467bb24b668a38e9d811","opening_id":"57c0667252834a308522421936e90408","ordinal":0,"position":"single","version":1}','added by keeper');
INSERT INTO "change_entry" VALUES(3,3,'lock_point','57c0667252834a308522421936e90408','57c0667252834a308522421936e90408','insert',NULL,'{"id":"57c0667252834a308522421936e90408","opening_id":"57c0667252834a308522421936e90408","version":1}',NULL);
INSERT INTO "change_entry" VALUES(4,0,'existing_item','230f15669b5e455296614e7fceda289d','2bd0639c3a6f457bb4468ffcc84d6b42','insert',NULL,'{"backset_mm":69.85,"id":"230f15669b5e455296614e7fceda289d","kind":"lock","opening_id":"2bd0639c3a6f457bb4468ffcc84d6b42","ordinal":0,"version":1}','added by keeper');
INSERT INTO "change_entry" VALUES(4,1,'lock_point','2bd0639c3a6f457bb4468ffcc84d6b42','2bd0639c3a6f457bb4468ffcc84d6b42','update','{"item_id":null}','{"item_id":"230f15669b5e455296614e7fceda289d"}',NULL);
INSERT INTO "change_entry" VALUES(5,0,'chosen_part','28d120970dd942e883a79f05b6c506bd','2bd0639c3a6f457bb4468ffcc84d6b42','insert',NULL,'{"id":"28d120970dd942e883a79f05b6c506bd","lock_point_id":"2bd0639c3a6f457bb4468ffcc84d6b42","opening_id":"2bd0639c3a6f457bb4468ffcc84d6b42","part":"C-1","quantity":1.0,"role":"cylinder","version":1}',NULL);
INSERT INTO "change_entry" VALUES(6,0,'placed_unit','10eb3305c59641398cf1f9a3c2d8648f','2bd0639c3a6f457bb4468ffcc84d6b42','insert',NULL,'{"face":"secured","id":"10eb3305c59641398cf1f9a3c2d8648f","leaf":"active","lock_point_id":"2bd0639c3a6f457bb4468ffcc84d6b42","opening_id":"2bd0639c3a6f457bb4468ffcc84d6b42","pattern":"above","version":1,"x_mm":20.0,"y_mm":1100.0}',NULL);
INSERT INTO "change_entry" VALUES(7,0,'own_field','4c06107be9f543d2b216fd41d7016dc1',NULL,'insert',NULL,'{"choices":["AA","BB"],"entity":"existing_item","id":"4c06107be9f543d2b216fd41d7016dc1","kind":"choice","label":"Key group","name":"key_group","unit":"","version":1}',NULL);
INSERT INTO "change_entry" VALUES(8,0,'existing_item','230f15669b5e455296614e7fceda289d','2bd0639c3a6f457bb4468ffcc84d6b42','update','{"extra":{}}','{"extra":{"key_group":"AA"}}','edited by keeper');
INSERT INTO "change_entry" VALUES(9,0,'import_mapping','e2788e2c53c94a2fb289f582d50a7548',NULL,'insert',NULL,'{"fingerprint":"f","id":"e2788e2c53c94a2fb289f582d50a7548","mapping":{"Mark":"opening.mark"},"name":"Doors","version":1}',NULL);
INSERT INTO "change_entry" VALUES(10,0,'opening_fit','2bd0639c3a6f457bb4468ffcc84d6b42','2bd0639c3a6f457bb4468ffcc84d6b42','insert',NULL,'{"case_key":"case","fit_key":"a8e0ba654ce651dc312b81ee49fe54ecc3d8f326dcb8086581341823c2ed4139","id":"2bd0639c3a6f457bb4468ffcc84d6b42","opening_id":"2bd0639c3a6f457bb4468ffcc84d6b42","version":1}',NULL);
INSERT INTO "change_entry" VALUES(11,0,'supply','7448f0c75fda48158ccfcb2c75cc72f5',NULL,'insert',NULL,'{"id":"7448f0c75fda48158ccfcb2c75cc72f5","name":"Closet","use":"laid","version":1,"x_m":2.5}',NULL);
INSERT INTO "change_entry" VALUES(11,1,'circuit','a1b3245a9e5f4f98a8914d9ae0662720',NULL,'insert',NULL,'{"alarm":"drops","id":"a1b3245a9e5f4f98a8914d9ae0662720","name":"A","supply_id":"7448f0c75fda48158ccfcb2c75cc72f5","version":1}',NULL);
INSERT INTO "change_entry" VALUES(11,2,'run','b69ed864166d46809d40051e84d9ff51',NULL,'insert',NULL,'{"circuit_id":"a1b3245a9e5f4f98a8914d9ae0662720","from_node":"supply","id":"b69ed864166d46809d40051e84d9ff51","to_node":"J1","version":1}',NULL);
INSERT INTO "change_entry" VALUES(11,3,'run','42678b0e61844b41aac6f8fcdfb4851b','2bd0639c3a6f457bb4468ffcc84d6b42','insert',NULL,'{"circuit_id":"a1b3245a9e5f4f98a8914d9ae0662720","from_node":"J1","gauge":"18 AWG","id":"42678b0e61844b41aac6f8fcdfb4851b","length_m":4.0,"opening_id":"2bd0639c3a6f457bb4468ffcc84d6b42","stranding":"solid","to_node":"2bd0639c3a6f457bb4468ffcc84d6b42","version":1}',NULL);
INSERT INTO "change_entry" VALUES(11,4,'route','d74be216383848e4a437f763602d4b2f','2bd0639c3a6f457bb4468ffcc84d6b42','insert',NULL,'{"id":"d74be216383848e4a437f763602d4b2f","length_m":6.0,"opening_id":"2bd0639c3a6f457bb4468ffcc84d6b42","pinned":true,"supply_id":"7448f0c75fda48158ccfcb2c75cc72f5","version":1}',NULL);
INSERT INTO "change_entry" VALUES(12,0,'hardware_set','25fac8212cb444e2b14038676d425c37',NULL,'insert',NULL,'{"id":"25fac8212cb444e2b14038676d425c37","name":"HS-1","version":1}',NULL);
INSERT INTO "change_entry" VALUES(12,1,'set_line','8fc1a5d09c3c49ffb4a5618f9b7f9291',NULL,'insert',NULL,'{"id":"8fc1a5d09c3c49ffb4a5618f9b7f9291","part":"U-1","quantity":1.0,"role":"unit","set_id":"25fac8212cb444e2b14038676d425c37","version":1}',NULL);
INSERT INTO "change_entry" VALUES(12,2,'opening','2bd0639c3a6f457bb4468ffcc84d6b42','2bd0639c3a6f457bb4468ffcc84d6b42','update','{"set_id":null}','{"set_id":"25fac8212cb444e2b14038676d425c37"}',NULL);
INSERT INTO "change_entry" VALUES(12,3,'waiver','f894a00f30fb4bdd9d5556d4c706104d','2bd0639c3a6f457bb4468ffcc84d6b42','insert',NULL,'{"about":"","facts":"f","given_on":"2026-01-02","id":"f894a00f30fb4bdd9d5556d4c706104d","opening_id":"2bd0639c3a6f457bb4468ffcc84d6b42","person":"keeper","reason":"seen","rule":"hand-known","scope":"opening","version":1}',NULL);
INSERT INTO "change_entry" VALUES(12,4,'issued_packet','39f6c17421f2467d8855180d485588c5','2bd0639c3a6f457bb4468ffcc84d6b42','insert',NULL,'{"at":"2026-01-02","by":"keeper","case_key":"case","id":"39f6c17421f2467d8855180d485588c5","opening_id":"2bd0639c3a6f457bb4468ffcc84d6b42","version":1}',NULL);
INSERT INTO "change_entry" VALUES(13,0,'assigned_part','41ab8365d6bb4b3ab1806695c8c3e4c3','2bd0639c3a6f457bb4468ffcc84d6b42','insert',NULL,'{"id":"41ab8365d6bb4b3ab1806695c8c3e4c3","lock_point_id":"2bd0639c3a6f457bb4468ffcc84d6b42","opening_id":"2bd0639c3a6f457bb4468ffcc84d6b42","part":"C-1","piece":1,"quantity":1.0,"role":"cylinder","serial":"SN-1","source":"by-hand","state":"planned","version":1}',NULL);
INSERT INTO "change_entry" VALUES(14,0,'person','f3b64719f1f94eefa832981b1331dd73',NULL,'insert',NULL,'{"id":"f3b64719f1f94eefa832981b1331dd73","name":"keeper","role":"specifier","version":1}',NULL);
INSERT INTO "change_entry" VALUES(15,0,'attachment','29100852106c48c8a2c1fbd025d41305','2bd0639c3a6f457bb4468ffcc84d6b42','insert',NULL,'{"blob":"508b7b1f113fdf173660d2b3dace45039a6d28f00ee27382c04c93af8213e4c9","entity":"opening","id":"29100852106c48c8a2c1fbd025d41305","name":"inside.txt","opening_id":"2bd0639c3a6f457bb4468ffcc84d6b42","ordinal":0,"row_id":"2bd0639c3a6f457bb4468ffcc84d6b42","title":"Inside","version":1}','file inside.txt');
INSERT INTO "change_entry" VALUES(16,0,'revision','213a6cd0f3814ef5a428da9155811e09',NULL,'insert',NULL,'{"at":"2026-01-02","id":"213a6cd0f3814ef5a428da9155811e09","letter":"A","person":"keeper","root":"0000000000000000000000000000000000000000000000000000000000000000","version":1}',NULL);
INSERT INTO "change_entry" VALUES(17,0,'opening','2bd0639c3a6f457bb4468ffcc84d6b42','2bd0639c3a6f457bb4468ffcc84d6b42','update','{"hand":null}','{"hand":"LHR"}','edited by keeper');
INSERT INTO "change_entry" VALUES(18,0,'opening','2bd0639c3a6f457bb4468ffcc84d6b42','2bd0639c3a6f457bb4468ffcc84d6b42','update','{"hand":"LHR"}','{"hand":"RH"}','edited by keeper');
INSERT INTO "change_entry" VALUES(19,0,'opening','2bd0639c3a6f457bb4468ffcc84d6b42','2bd0639c3a6f457bb4468ffcc84d6b42','update','{"hand":"RH"}','{"hand":"LHR"}',NULL);
CREATE TABLE change_reference (
	row_id TEXT NOT NULL, 
	change_set INTEGER NOT NULL, 
	CONSTRAINT pk_change_reference PRIMARY KEY (row_id, change_set), 
	CONSTRAINT fk_change_reference_change_set FOREIGN KEY(change_set) REFERENCES change_set (number)
);
INSERT INTO "change_reference" VALUES('773b60e33f8c4ea0aabac239e960d49b',1);
INSERT INTO "change_reference" VALUES('a3a7d6b5fea24d27be9737b02aa2122c',2);
INSERT INTO "change_reference" VALUES('e7dc6fe6717b40f68cb4aeb0a098522d',2);
INSERT INTO "change_reference" VALUES('443f61c573e04fd1aa4a1a9d2eb48519',3);
INSERT INTO "change_reference" VALUES('230f15669b5e455296614e7fceda289d',4);
INSERT INTO "change_reference" VALUES('2bd0639c3a6f457bb4468ffcc84d6b42',5);
INSERT INTO "change_reference" VALUES('2bd0639c3a6f457bb4468ffcc84d6b42',6);
INSERT INTO "change_reference" VALUES('2bd0639c3a6f457bb4468ffcc84d6b42',10);
INSERT INTO "change_reference" VALUES('7448f0c75fda48158ccfcb2c75cc72f5',11);
INSERT INTO "change_reference" VALUES('a1b3245a9e5f4f98a8914d9ae0662720',11);
INSERT INTO "change_reference" VALUES('25fac8212cb444e2b14038676d425c37',12);
INSERT INTO "change_reference" VALUES('2bd0639c3a6f457bb4468ffcc84d6b42',13);
INSERT INTO "change_reference" VALUES('2bd0639c3a6f457bb4468ffcc84d6b42',15);
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
INSERT INTO "change_set" VALUES(1,'52acae7b79ea466fa7041ec94ed42b23',0,'2026-11-28T08:21:01.975+00:00','keeper','vm','7335bd22ca28476db696c43f4df1d746','import-catalogue','Catalogue','edit',NULL,3);
INSERT INTO "change_set" VALUES(2,'bac0db15105c4d87b7cd6f54809a90f2',1,'2026-11-28T08:21:02.031+00:00','keeper','vm','7335bd22ca28476db696c43f4df1d746','add-opening','Add opening 0012','edit',NULL,6);
INSERT INTO "change_set" VALUES(3,'4484750c95ba474b82543b9209205593',2,'2026-11-28T08:21:02.082+00:00','keeper','vm','7335bd22ca28476db696c43f4df1d746','add-opening','Add opening 9E4','edit',NULL,4);
INSERT INTO "change_set" VALUES(4,'b6f84a6a05544a408ebf89d5ae9f10bb',3,'2026-11-28T08:21:02.107+00:00','keeper','vm','7335bd22ca28476db696c43f4df1d746','add-item','Add existing item lock to 0012','edit',NULL,2);
INSERT INTO "change_set" VALUES(5,'70920848268440709ed01ce25579b5e3',4,'2026-11-28T08:21:02.168+00:00','keeper','vm','7335bd22ca28476db696c43f4df1d746','choose-part','Choose C-1 as cylinder of 0012','edit',NULL,1);
INSERT INTO "change_set" VALUES(6,'fa1150b54da44438899f893919a8e2ef',5,'2026-11-28T08:21:02.197+00:00','keeper','vm','7335bd22ca28476db696c43f4df1d746','place-unit','Place the unit of 0012','edit',NULL,1);
INSERT INTO "change_set" VALUES(7,'41b0fb8b975f4dbca8e6e534c83d4175',6,'2026-11-28T08:21:02.218+00:00','keeper','vm','7335bd22ca28476db696c43f4df1d746','define-field','Define field Key group','edit',NULL,1);
INSERT INTO "change_set" VALUES(8,'5ec55292a9d049f9af196bcc75b92e3f',7,'2026-11-28T08:21:02.234+00:00','keeper','vm','7335bd22ca28476db696c43f4df1d746','set-own-value','Set Key group','edit',NULL,1);
INSERT INTO "change_set" VALUES(9,'12c8bd6d218d46c181fade8ece74e9e4',8,'2026-11-28T08:21:02.256+00:00','keeper','vm','7335bd22ca28476db696c43f4df1d746','import-survey','Mapping','edit',NULL,1);
INSERT INTO "change_set" VALUES(10,'19e283275fd340f6b728be8563ef14d5',9,'2026-11-28T08:21:02.276+00:00','keeper','vm','7335bd22ca28476db696c43f4df1d746','fit','Fit','edit',NULL,1);
INSERT INTO "change_set" VALUES(11,'91c2d5758a3f47e798b7ff383c163c07',10,'2026-11-28T08:21:02.300+00:00','keeper','vm','7335bd22ca28476db696c43f4df1d746','lay-supply','Power','edit',NULL,5);
INSERT INTO "change_set" VALUES(12,'08b5d4488cdf488fa5860f21c52a6472',11,'2026-11-28T08:21:02.315+00:00','keeper','vm','7335bd22ca28476db696c43f4df1d746','make-set','Sets, waivers, packets','edit',NULL,5);
INSERT INTO "change_set" VALUES(13,'f0e07f6633db4de9965cb80c78d59e44',12,'2026-11-28T08:21:02.346+00:00','keeper','vm','7335bd22ca28476db696c43f4df1d746','record-piece','Pieces','edit',NULL,1);
INSERT INTO "change_set" VALUES(14,'d3de94a820644d43947b99d61191448c',13,'2026-11-28T08:21:02.366+00:00','keeper','vm','7335bd22ca28476db696c43f4df1d746','add-person','List keeper as specifier','edit',NULL,1);
INSERT INTO "change_set" VALUES(15,'75488194bc6846dc97b08d1a9d27d589',14,'2026-11-28T08:21:02.389+00:00','keeper','vm','7335bd22ca28476db696c43f4df1d746','attach','Attach inside.txt to 0012','edit',NULL,1);
INSERT INTO "change_set" VALUES(16,'4a9843cc02b745b994ea1b8088123d05',15,'2026-11-28T08:21:02.402+00:00','keeper','vm','7335bd22ca28476db696c43f4df1d746','freeze','Freeze A','edit',NULL,1);
INSERT INTO "change_set" VALUES(17,'7bd1dc3855064d7fa886ef2a1bf03d3d',16,'2026-11-28T08:21:02.418+00:00','keeper','vm','7335bd22ca28476db696c43f4df1d746','edit-facts','Edit hand of 0012','edit',NULL,1);
INSERT INTO "change_set" VALUES(18,'6cf273d54f1a4f0daa69bf988ca5a68e',17,'2026-11-28T08:21:02.442+00:00','keeper','vm','7335bd22ca28476db696c43f4df1d746','edit-facts','Edit hand of 0012','edit',NULL,1);
INSERT INTO "change_set" VALUES(19,'13ba5058a678468fa5915848a920ec1d',18,'2026-11-28T08:21:02.478+00:00','keeper','vm','7335bd22ca28476db696c43f4df1d746','undo','Take back step 18: Edit hand of 0012','undo',18,1);
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
INSERT INTO "chosen_part" VALUES('28d120970dd942e883a79f05b6c506bd',1,'2bd0639c3a6f457bb4468ffcc84d6b42','2bd0639c3a6f457bb4468ffcc84d6b42','cylinder','C-1',1.0);
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
INSERT INTO "circuit" VALUES('a1b3245a9e5f4f98a8914d9ae0662720',1,'7448f0c75fda48158ccfcb2c75cc72f5','A',NULL,NULL,NULL,NULL,'drops',NULL);
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
INSERT INTO "existing_item" VALUES('230f15669b5e455296614e7fceda289d',2,'2bd0639c3a6f457bb4468ffcc84d6b42',0,'lock',NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,69.85,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,'{"key_group":"AA"}');
CREATE TABLE fit_content (
	"key" TEXT NOT NULL, 
	status TEXT NOT NULL, 
	content TEXT NOT NULL, 
	CONSTRAINT pk_fit_content PRIMARY KEY ("key")
);
INSERT INTO "fit_content" VALUES('a8e0ba654ce651dc312b81ee49fe54ecc3d8f326dcb8086581341823c2ed4139','unknown','{"status":"unknown"}');
CREATE TABLE frozen (
	hash TEXT NOT NULL, 
	kind TEXT NOT NULL, 
	content TEXT NOT NULL, 
	CONSTRAINT pk_frozen PRIMARY KEY (hash)
);
INSERT INTO "frozen" VALUES('0000000000000000000000000000000000000000000000000000000000000000','revision','{}');
CREATE TABLE hardware_set (
	id TEXT NOT NULL, 
	version INTEGER DEFAULT 1 NOT NULL, 
	name TEXT NOT NULL, 
	notes TEXT, 
	CONSTRAINT pk_hardware_set PRIMARY KEY (id), 
	CONSTRAINT uq_hardware_set_name UNIQUE (name)
);
INSERT INTO "hardware_set" VALUES('25fac8212cb444e2b14038676d425c37',1,'HS-1',NULL);
CREATE TABLE import_mapping (
	id TEXT NOT NULL, 
	version INTEGER DEFAULT 1 NOT NULL, 
	fingerprint TEXT NOT NULL, 
	name TEXT, 
	mapping TEXT DEFAULT '{}' NOT NULL, 
	CONSTRAINT pk_import_mapping PRIMARY KEY (id), 
	CONSTRAINT uq_import_mapping_fingerprint UNIQUE (fingerprint)
);
INSERT INTO "import_mapping" VALUES('e2788e2c53c94a2fb289f582d50a7548',1,'f','Doors','{"Mark":"opening.mark"}');
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
INSERT INTO "issued_packet" VALUES('39f6c17421f2467d8855180d485588c5',1,'2bd0639c3a6f457bb4468ffcc84d6b42','2026-01-02','keeper','case');
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
INSERT INTO "kit_content" VALUES('4303b04051a244b19bebe41f2cc37cf8',1,'773b60e33f8c4ea0aabac239e960d49b','S-1',2.0);
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
INSERT INTO "leaf" VALUES('85b763f8706447029f283ee250895c2d',1,'2bd0639c3a6f457bb4468ffcc84d6b42',0,'active',NULL,NULL,NULL,NULL,NULL,NULL,NULL);
INSERT INTO "leaf" VALUES('8cd6f92057ec4691aa1af4c3d74b613e',1,'2bd0639c3a6f457bb4468ffcc84d6b42',1,'inactive',NULL,NULL,NULL,NULL,NULL,NULL,NULL);
INSERT INTO "leaf" VALUES('771beaea4b45467bb24b668a38e9d811',1,'57c0667252834a308522421936e90408',0,'single',NULL,NULL,NULL,NULL,NULL,NULL,NULL);
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
INSERT INTO "level" VALUES('a3a7d6b5fea24d27be9737b02aa2122c',1,'e7dc6fe6717b40f68cb4aeb0a098522d','1',0,NULL);
INSERT INTO "level" VALUES('443f61c573e04fd1aa4a1a9d2eb48519',1,NULL,'roof',1,NULL);
CREATE TABLE lock_point (
	id TEXT NOT NULL, 
	version INTEGER DEFAULT 1 NOT NULL, 
	opening_id TEXT NOT NULL, 
	item_id TEXT, 
	CONSTRAINT pk_lock_point PRIMARY KEY (id), 
	CONSTRAINT fk_lock_point_opening_id FOREIGN KEY(opening_id) REFERENCES opening (id), 
	CONSTRAINT fk_lock_point_item_id FOREIGN KEY(item_id) REFERENCES existing_item (id) DEFERRABLE INITIALLY DEFERRED
);
INSERT INTO "lock_point" VALUES('2bd0639c3a6f457bb4468ffcc84d6b42',2,'2bd0639c3a6f457bb4468ffcc84d6b42','230f15669b5e455296614e7fceda289d');
INSERT INTO "lock_point" VALUES('57c0667252834a308522421936e90408',1,'57c0667252834a308522421936e90408',NULL);
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
INSERT INTO "opening" VALUES('2bd0639c3a6f457bb4468ffcc84d6b42',5,'a3a7d6b5fea24d27be9737b02aa2122c','25fac8212cb444e2b14038676d425c37','0012',NULL,NULL,NULL,'LHR',NULL,1,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,'{}');
INSERT INTO "opening" VALUES('57c0667252834a308522421936e90408',1,'443f61c573e04fd1aa4a1a9d2eb48519',NULL,'9E4',NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,'{}');
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
INSERT INTO "opening_fit" VALUES('2bd0639c3a6f457bb4468ffcc84d6b42',1,'2bd0639c3a6f457bb4468ffcc84d6b42','case','a8e0ba654ce651dc312b81ee49fe54ecc3d8f326dcb8086581341823c2ed4139');
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
INSERT INTO "own_field" VALUES('4c06107be9f543d2b216fd41d7016dc1',1,'existing_item','key_group','Key group','choice','','["AA","BB"]');
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
INSERT INTO "part" VALUES('773b60e33f8c4ea0aabac239e960d49b',1,'C-1','mortise-cylinder',NULL,NULL,NULL,'EA','12.1','USD',NULL,NULL,NULL,'{}','{}');
INSERT INTO "part" VALUES('37df1cc282254cba870a36ea5448bf01',1,'U-1','surface-unit',NULL,NULL,NULL,'EA',NULL,NULL,NULL,NULL,NULL,'{}','{}');
CREATE TABLE person (
	id TEXT NOT NULL, 
	version INTEGER DEFAULT 1 NOT NULL, 
	name TEXT NOT NULL, 
	role TEXT NOT NULL, 
	CONSTRAINT pk_person PRIMARY KEY (id), 
	CONSTRAINT uq_person_name UNIQUE (name)
);
INSERT INTO "person" VALUES('f3b64719f1f94eefa832981b1331dd73',1,'keeper','specifier');
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
INSERT INTO "placed_unit" VALUES('10eb3305c59641398cf1f9a3c2d8648f',1,'2bd0639c3a6f457bb4468ffcc84d6b42','2bd0639c3a6f457bb4468ffcc84d6b42','active','secured','above',20.0,1100.0);
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
INSERT INTO "project" VALUES('d7f38c922ad34e9abf62eae6ac698076',1,'Saved yard','2026-11-28T08:21:01+00:00','mm','mm','{}');
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
INSERT INTO "revision" VALUES('213a6cd0f3814ef5a428da9155811e09',1,'A','2026-01-02','keeper',NULL,'{}','0000000000000000000000000000000000000000000000000000000000000000');
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
INSERT INTO "route" VALUES('d74be216383848e4a437f763602d4b2f',1,'2bd0639c3a6f457bb4468ffcc84d6b42','7448f0c75fda48158ccfcb2c75cc72f5',6.0,1);
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
INSERT INTO "run" VALUES('b69ed864166d46809d40051e84d9ff51',1,'a1b3245a9e5f4f98a8914d9ae0662720',NULL,'supply','J1',NULL,NULL,NULL,NULL,NULL,NULL);
INSERT INTO "run" VALUES('42678b0e61844b41aac6f8fcdfb4851b',1,'a1b3245a9e5f4f98a8914d9ae0662720','2bd0639c3a6f457bb4468ffcc84d6b42','J1','2bd0639c3a6f457bb4468ffcc84d6b42',4.0,NULL,'18 AWG','solid',NULL,NULL);
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
INSERT INTO "set_line" VALUES('8fc1a5d09c3c49ffb4a5618f9b7f9291',1,'25fac8212cb444e2b14038676d425c37','unit','U-1',1.0);
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
INSERT INTO "supply" VALUES('7448f0c75fda48158ccfcb2c75cc72f5',1,NULL,'Closet',NULL,2.5,NULL,NULL,NULL,'laid',NULL,NULL,NULL,NULL,NULL);
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
INSERT INTO "waiver" VALUES('f894a00f30fb4bdd9d5556d4c706104d',1,'2bd0639c3a6f457bb4468ffcc84d6b42','hand-known','','opening','f','keeper','seen','2026-01-02',NULL);
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
