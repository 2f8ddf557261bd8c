-- A book of version 6, written by the program as it was before version 7, as the statements that make it
-- again; invented contents.  application_id and user_version are set by the test.
BEGIN TRANSACTION;
CREATE TABLE balloon (seq INTEGER PRIMARY KEY REFERENCES journal (seq) DEFERRABLE INITIALLY DEFERRED, job INTEGER NOT NULL REFERENCES job (seq) DEFERRABLE INITIALLY DEFERRED, key TEXT NOT NULL, rank INTEGER NOT NULL, removed INTEGER NOT NULL CHECK (removed IN (0, 1)), changed_by TEXT NOT NULL, changed_at TEXT NOT NULL, drawing TEXT NOT NULL, feature TEXT NOT NULL, place INTEGER, x_count INTEGER, x_form TEXT, y_count INTEGER, y_form TEXT, to_x_count INTEGER, to_x_form TEXT, to_y_count INTEGER, to_y_form TEXT, extra TEXT NOT NULL) STRICT;
CREATE TABLE budget_line (seq INTEGER PRIMARY KEY REFERENCES journal (seq) DEFERRABLE INITIALLY DEFERRED, job INTEGER NOT NULL REFERENCES job (seq) DEFERRABLE INITIALLY DEFERRED, key TEXT NOT NULL, rank INTEGER NOT NULL, removed INTEGER NOT NULL CHECK (removed IN (0, 1)), changed_by TEXT NOT NULL, changed_at TEXT NOT NULL, method TEXT NOT NULL, kind TEXT NOT NULL, name TEXT NOT NULL, value_pm INTEGER, value_form TEXT, distribution TEXT NOT NULL, divisor_count INTEGER, divisor_form TEXT, dof_count INTEGER, dof_form TEXT, source TEXT NOT NULL, extra TEXT NOT NULL) STRICT;
CREATE TABLE calibration (seq INTEGER PRIMARY KEY REFERENCES journal (seq) DEFERRABLE INITIALLY DEFERRED, job INTEGER NOT NULL REFERENCES job (seq) DEFERRABLE INITIALLY DEFERRED, key TEXT NOT NULL, rank INTEGER NOT NULL, removed INTEGER NOT NULL CHECK (removed IN (0, 1)), changed_by TEXT NOT NULL, changed_at TEXT NOT NULL, gauge TEXT NOT NULL, date TEXT NOT NULL, due TEXT NOT NULL, certificate TEXT NOT NULL, calibrated_by TEXT NOT NULL, uncertainty_pm INTEGER, uncertainty_form TEXT, coverage_count INTEGER, coverage_form TEXT, error_pm INTEGER, error_form TEXT, outcome TEXT NOT NULL, note TEXT NOT NULL, extra TEXT NOT NULL) STRICT;
CREATE TABLE content (seq INTEGER PRIMARY KEY REFERENCES journal (seq) DEFERRABLE INITIALLY DEFERRED, job INTEGER NOT NULL REFERENCES job (seq) DEFERRABLE INITIALLY DEFERRED, digest TEXT NOT NULL, length INTEGER NOT NULL, bytes BLOB NOT NULL, UNIQUE (job, digest)) STRICT;
CREATE TABLE cut (seq INTEGER PRIMARY KEY REFERENCES journal (seq) DEFERRABLE INITIALLY DEFERRED, job INTEGER NOT NULL REFERENCES job (seq) DEFERRABLE INITIALLY DEFERRED, id TEXT NOT NULL, piece TEXT NOT NULL, feature TEXT NOT NULL, dialled_pm INTEGER, dialled_form TEXT, passes INTEGER NOT NULL, taken_by TEXT NOT NULL, taken_at TEXT NOT NULL, replaces TEXT NOT NULL, reason TEXT NOT NULL, extra TEXT NOT NULL, reads TEXT NOT NULL DEFAULT '', place INTEGER, tool TEXT NOT NULL DEFAULT '', after_reading TEXT NOT NULL DEFAULT '', note TEXT NOT NULL DEFAULT '', UNIQUE (job, id)) STRICT;
CREATE TABLE drawing (seq INTEGER PRIMARY KEY REFERENCES journal (seq) DEFERRABLE INITIALLY DEFERRED, job INTEGER NOT NULL REFERENCES job (seq) DEFERRABLE INITIALLY DEFERRED, key TEXT NOT NULL, rank INTEGER NOT NULL, removed INTEGER NOT NULL CHECK (removed IN (0, 1)), changed_by TEXT NOT NULL, changed_at TEXT NOT NULL, name TEXT NOT NULL, sheet TEXT NOT NULL, media TEXT NOT NULL, page INTEGER, digest TEXT NOT NULL, extra TEXT NOT NULL) STRICT;
CREATE TABLE event (seq INTEGER PRIMARY KEY REFERENCES journal (seq) DEFERRABLE INITIALLY DEFERRED, job INTEGER NOT NULL REFERENCES job (seq) DEFERRABLE INITIALLY DEFERRED, key TEXT NOT NULL, rank INTEGER NOT NULL, removed INTEGER NOT NULL CHECK (removed IN (0, 1)), changed_by TEXT NOT NULL, changed_at TEXT NOT NULL, before_piece TEXT NOT NULL, kind TEXT NOT NULL, note TEXT NOT NULL, amount TEXT NOT NULL, extra TEXT NOT NULL, feature TEXT NOT NULL DEFAULT '', tool TEXT NOT NULL DEFAULT '', seen_by TEXT NOT NULL DEFAULT '', seen_at TEXT NOT NULL DEFAULT '') STRICT;
CREATE TABLE facts (seq INTEGER PRIMARY KEY REFERENCES journal (seq) DEFERRABLE INITIALLY DEFERRED, job INTEGER NOT NULL REFERENCES job (seq) DEFERRABLE INITIALLY DEFERRED, key TEXT NOT NULL, rank INTEGER NOT NULL, removed INTEGER NOT NULL CHECK (removed IN (0, 1)), changed_by TEXT NOT NULL, changed_at TEXT NOT NULL, part_number TEXT NOT NULL, part_name TEXT NOT NULL, revision TEXT NOT NULL, drawing TEXT NOT NULL, customer TEXT NOT NULL, order_number TEXT NOT NULL, unit TEXT NOT NULL, material TEXT NOT NULL, standard TEXT NOT NULL, decision TEXT NOT NULL, simple_ratio_count INTEGER, simple_ratio_form TEXT, general_tolerance TEXT NOT NULL, first_article TEXT NOT NULL, first_article_reason TEXT NOT NULL, first_article_baseline TEXT NOT NULL, first_article_extra TEXT NOT NULL, extra TEXT NOT NULL, job_extra TEXT NOT NULL, part_temp_limit_count INTEGER, part_temp_limit_form TEXT, gauge_temp_limit_count INTEGER, gauge_temp_limit_form TEXT, thermometer_count INTEGER, thermometer_form TEXT, expansion_count INTEGER, expansion_form TEXT, entry_clearance_pm INTEGER, entry_clearance_form TEXT, drift_rule TEXT NOT NULL DEFAULT '', drift_limit_count INTEGER, drift_limit_form TEXT, check_hours_count INTEGER, check_hours_form TEXT, cut_risk_count INTEGER, cut_risk_form TEXT, cut_aim TEXT NOT NULL DEFAULT '', drawing_revision TEXT NOT NULL DEFAULT '', article TEXT NOT NULL DEFAULT '', report_identifier TEXT NOT NULL DEFAULT '', organisation TEXT NOT NULL DEFAULT '', supplier_code TEXT NOT NULL DEFAULT '', manufacturing_record TEXT NOT NULL DEFAULT '', drawing_changes TEXT NOT NULL DEFAULT '', language TEXT NOT NULL DEFAULT '', second_language TEXT NOT NULL DEFAULT '', report_extra TEXT NOT NULL DEFAULT '') STRICT;
INSERT INTO "facts" VALUES(2,1,'',0,0,'','','V6-1','Invented bush','','','','','mm','','ISO','guarded',NULL,NULL,'','full','','','','','',NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,'',NULL,NULL,NULL,NULL,NULL,NULL,'','','','','','','','','','','');
CREATE TABLE feature (seq INTEGER PRIMARY KEY REFERENCES journal (seq) DEFERRABLE INITIALLY DEFERRED, job INTEGER NOT NULL REFERENCES job (seq) DEFERRABLE INITIALLY DEFERRED, key TEXT NOT NULL, rank INTEGER NOT NULL, removed INTEGER NOT NULL CHECK (removed IN (0, 1)), changed_by TEXT NOT NULL, changed_at TEXT NOT NULL, balloon TEXT NOT NULL, kind TEXT NOT NULL, name TEXT NOT NULL, requirement TEXT NOT NULL, unit TEXT NOT NULL, nominal_pm INTEGER, nominal_form TEXT, lower_pm INTEGER, lower_form TEXT, upper_pm INTEGER, upper_form TEXT, cut TEXT NOT NULL, envelope INTEGER NOT NULL, designator TEXT NOT NULL, places INTEGER NOT NULL, stations TEXT NOT NULL, size_feature TEXT NOT NULL, method TEXT NOT NULL, check_rule TEXT NOT NULL, group_size INTEGER NOT NULL, sheet TEXT NOT NULL, zone TEXT NOT NULL, mate_given INTEGER NOT NULL, mate_kind TEXT NOT NULL, mate_lower_pm INTEGER, mate_lower_form TEXT, mate_upper_pm INTEGER, mate_upper_form TEXT, mate_extra TEXT NOT NULL, zone_diameter INTEGER NOT NULL, modifier TEXT NOT NULL, datums TEXT NOT NULL, extra TEXT NOT NULL, counts TEXT NOT NULL DEFAULT '', form_unseen_pm INTEGER, form_unseen_form TEXT, tool TEXT NOT NULL DEFAULT '', wanted_least_pm INTEGER, wanted_least_form TEXT, wanted_most_pm INTEGER, wanted_most_form TEXT, press_length_pm INTEGER, press_length_form TEXT, hub_outside_pm INTEGER, hub_outside_form TEXT, shaft_inside_pm INTEGER, shaft_inside_form TEXT, hub_material TEXT NOT NULL DEFAULT '', shaft_material TEXT NOT NULL DEFAULT '', friction_least_count INTEGER, friction_least_form TEXT, friction_most_count INTEGER, friction_most_form TEXT, hub_roughness_pm INTEGER, hub_roughness_form TEXT, shaft_roughness_pm INTEGER, shaft_roughness_form TEXT, press_gap_pm INTEGER, press_gap_form TEXT, press_extra TEXT NOT NULL DEFAULT '', chart_rules TEXT NOT NULL DEFAULT '', chart_baseline INTEGER, affected INTEGER, tooling TEXT NOT NULL DEFAULT '', comment TEXT NOT NULL DEFAULT '') STRICT;
INSERT INTO "feature" VALUES(4,1,'1',1048576,0,'','','1','bore','','Ø25 H7','mm',25000000000,'mm.0',25000000000,'mm.3',25021000000,'mm.3','',0,'',1,'','','','',0,'','',0,'',NULL,NULL,NULL,NULL,'',0,'','','','',NULL,NULL,'',NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,'','',NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,'','',NULL,NULL,'','');
CREATE TABLE gauge (seq INTEGER PRIMARY KEY REFERENCES journal (seq) DEFERRABLE INITIALLY DEFERRED, job INTEGER NOT NULL REFERENCES job (seq) DEFERRABLE INITIALLY DEFERRED, key TEXT NOT NULL, rank INTEGER NOT NULL, removed INTEGER NOT NULL CHECK (removed IN (0, 1)), changed_by TEXT NOT NULL, changed_at TEXT NOT NULL, tag TEXT NOT NULL, kind TEXT NOT NULL, unit TEXT NOT NULL, resolution_pm INTEGER, resolution_form TEXT, error_limit_pm INTEGER, error_limit_form TEXT, calibrated TEXT NOT NULL, due TEXT NOT NULL, certificate TEXT NOT NULL, extra TEXT NOT NULL, serial TEXT NOT NULL DEFAULT '', owner TEXT NOT NULL DEFAULT '', place TEXT NOT NULL DEFAULT '', range_from_pm INTEGER, range_from_form TEXT, range_to_pm INTEGER, range_to_form TEXT, feel_pm INTEGER, feel_form TEXT, expansion_count INTEGER, expansion_form TEXT, pin_step_pm INTEGER, pin_step_form TEXT, pin_class TEXT NOT NULL DEFAULT '', pin_sign TEXT NOT NULL DEFAULT '', source TEXT NOT NULL DEFAULT '', blocks TEXT NOT NULL DEFAULT '') STRICT;
CREATE TABLE gauge_check (seq INTEGER PRIMARY KEY REFERENCES journal (seq) DEFERRABLE INITIALLY DEFERRED, job INTEGER NOT NULL REFERENCES job (seq) DEFERRABLE INITIALLY DEFERRED, key TEXT NOT NULL, rank INTEGER NOT NULL, removed INTEGER NOT NULL CHECK (removed IN (0, 1)), changed_by TEXT NOT NULL, changed_at TEXT NOT NULL, gauge TEXT NOT NULL, standard_pm INTEGER, standard_form TEXT, reading_pm INTEGER, reading_form TEXT, checked_by TEXT NOT NULL, checked_at TEXT NOT NULL, note TEXT NOT NULL, extra TEXT NOT NULL) STRICT;
CREATE TABLE job (seq INTEGER PRIMARY KEY REFERENCES journal (seq) DEFERRABLE INITIALLY DEFERRED, job INTEGER NOT NULL CHECK (job = seq), id TEXT NOT NULL UNIQUE) STRICT;
INSERT INTO "job" VALUES(1,1,'5f6c2f0e-0000-4000-8000-000000000007');
CREATE TABLE journal (seq INTEGER PRIMARY KEY CHECK (seq > 0), job INTEGER NOT NULL, kind TEXT NOT NULL, payload TEXT NOT NULL, prev BLOB NOT NULL CHECK (length (prev) = 32)) STRICT;
INSERT INTO "journal" VALUES(1,1,'job','id=5f6c2f0e-0000-4000-8000-000000000007
',X'0000000000000000000000000000000000000000000000000000000000000000');
INSERT INTO "journal" VALUES(2,1,'facts','rank=0
removed=0
part_number=V6-1
part_name=Invented bush
unit=mm
standard=ISO
decision=guarded
first_article=full
',X'4F20C4AB7E2C6D3D0E1E9DFCB8A4B229E4E31228207A1499B5590CBCB2020AF5');
INSERT INTO "journal" VALUES(3,1,'person','key=RW
rank=1048576
removed=0
initials=RW
name=R. Work (invented)
',X'F129B49D6D456CDB5C5D45D4CAC01B9131D03BFB4B2F955444CF6C916972EA6A');
INSERT INTO "journal" VALUES(4,1,'feature','key=1
rank=1048576
removed=0
balloon=1
kind=bore
requirement=Ø25 H7
unit=mm
nominal_pm=25000000000
nominal_form=mm.0
lower_pm=25000000000
lower_form=mm.3
upper_pm=25021000000
upper_form=mm.3
envelope=0
places=1
group_size=0
mate_given=0
zone_diameter=0
',X'80A6EE66CD90421AC0AE43D27ED66FCD8C31B6E9A0A9F40DAA7D1D2FA5E1A040');
INSERT INTO "journal" VALUES(5,1,'piece','key=001
rank=1048576
removed=0
serial=001
first_article=0
',X'89443904B7E8D954B140F5B19890ADFA3EE7BAA8E736A783C9DF8DA0CFA4B8CE');
INSERT INTO "journal" VALUES(6,1,'reading','id=1
piece=001
feature=1
place=1
value_pm=25012000000
value_form=mm.3
taken_by=RW
taken_at=2026-05-04T09:12:33Z
',X'C2696F19C0A3A9382416B0114A90DB3B9A06969EB3B3C30F2DE42C198DE1CCD2');
INSERT INTO "journal" VALUES(7,0,'template','changed_at=2026-11-30T18:07:13Z
name=Example Precision (invented)
address=1 Mill Lane
accent=#1a5f7a
hidden=class
',X'956EA7D275AA5325E4E62D67B7DB8DF1D7D88677718CF433BB6F420718F9A4AE');
INSERT INTO "journal" VALUES(8,0,'template_field','template=7
name=Heat number
required=1
',X'87D36805B7E76675F9A6C5BC327CA941DC5CA843B34403DAC4454D297B03DAF9');
INSERT INTO "journal" VALUES(9,0,'template_text','template=7
statement=1
place=before signatures
text=We made it.
',X'48219763516D486E5D10B4C50F82EF4FF69195A91D1797DE7A58DBE51205E004');
INSERT INTO "journal" VALUES(10,0,'template','changed_at=2026-11-30T18:07:14Z
name=Example Precision (invented)
address=2 Mill Lane
accent=#a01e28
hidden=class
',X'A8CBF0D427D110FD2D52445B1AFB5D4C4971C668ACCD3FFE93474A582E3F9B03');
INSERT INTO "journal" VALUES(11,0,'template_field','template=10
name=Heat number
required=1
',X'EF27EA7325FC9AA2DF3033048F60931491B6C77DF9020D12F675836B4FA9520B');
INSERT INTO "journal" VALUES(12,0,'template_text','template=10
statement=1
place=before signatures
text=We made it.
',X'F9E3E81BA9FE691DF693F2D4A6BF0802589D3EC8B56ECDDAA5B507654BF4688A');
CREATE TABLE mate (seq INTEGER PRIMARY KEY REFERENCES journal (seq) DEFERRABLE INITIALLY DEFERRED, job INTEGER NOT NULL REFERENCES job (seq) DEFERRABLE INITIALLY DEFERRED, key TEXT NOT NULL, rank INTEGER NOT NULL, removed INTEGER NOT NULL CHECK (removed IN (0, 1)), changed_by TEXT NOT NULL, changed_at TEXT NOT NULL, feature TEXT NOT NULL, serial TEXT NOT NULL, smallest_pm INTEGER, smallest_form TEXT, largest_pm INTEGER, largest_form TEXT, uncertainty_pm INTEGER, uncertainty_form TEXT, piece TEXT NOT NULL, place_count INTEGER, place_form TEXT, measured_by TEXT NOT NULL, measured_at TEXT NOT NULL, note TEXT NOT NULL, extra TEXT NOT NULL) STRICT;
CREATE TABLE material (seq INTEGER PRIMARY KEY REFERENCES journal (seq) DEFERRABLE INITIALLY DEFERRED, job INTEGER NOT NULL REFERENCES job (seq) DEFERRABLE INITIALLY DEFERRED, key TEXT NOT NULL, rank INTEGER NOT NULL, removed INTEGER NOT NULL CHECK (removed IN (0, 1)), changed_by TEXT NOT NULL, changed_at TEXT NOT NULL, name TEXT NOT NULL, modulus_count INTEGER, modulus_form TEXT, poisson_count INTEGER, poisson_form TEXT, yield_count INTEGER, yield_form TEXT, expansion_count INTEGER, expansion_form TEXT, cold_count INTEGER, cold_form TEXT, plastic INTEGER NOT NULL, source TEXT NOT NULL, extra TEXT NOT NULL) STRICT;
CREATE TABLE method (seq INTEGER PRIMARY KEY REFERENCES journal (seq) DEFERRABLE INITIALLY DEFERRED, job INTEGER NOT NULL REFERENCES job (seq) DEFERRABLE INITIALLY DEFERRED, key TEXT NOT NULL, rank INTEGER NOT NULL, removed INTEGER NOT NULL CHECK (removed IN (0, 1)), changed_by TEXT NOT NULL, changed_at TEXT NOT NULL, name TEXT NOT NULL, gauges TEXT NOT NULL, repeatability_pm INTEGER, repeatability_form TEXT, repeatability_dof_count INTEGER, repeatability_dof_form TEXT, extra TEXT NOT NULL, repeatability_source TEXT NOT NULL DEFAULT '') STRICT;
CREATE TABLE nonconformance (seq INTEGER PRIMARY KEY REFERENCES journal (seq) DEFERRABLE INITIALLY DEFERRED, job INTEGER NOT NULL REFERENCES job (seq) DEFERRABLE INITIALLY DEFERRED, key TEXT NOT NULL, rank INTEGER NOT NULL, removed INTEGER NOT NULL CHECK (removed IN (0, 1)), changed_by TEXT NOT NULL, changed_at TEXT NOT NULL, piece TEXT NOT NULL, feature TEXT NOT NULL, number TEXT NOT NULL, note TEXT NOT NULL, disposition TEXT NOT NULL, extra TEXT NOT NULL, place INTEGER, raised_by TEXT NOT NULL DEFAULT '', raised_at TEXT NOT NULL DEFAULT '', rework_by TEXT NOT NULL DEFAULT '', rework_at TEXT NOT NULL DEFAULT '', rework_after TEXT NOT NULL DEFAULT '') STRICT;
CREATE TABLE person (seq INTEGER PRIMARY KEY REFERENCES journal (seq) DEFERRABLE INITIALLY DEFERRED, job INTEGER NOT NULL REFERENCES job (seq) DEFERRABLE INITIALLY DEFERRED, key TEXT NOT NULL, rank INTEGER NOT NULL, removed INTEGER NOT NULL CHECK (removed IN (0, 1)), changed_by TEXT NOT NULL, changed_at TEXT NOT NULL, initials TEXT NOT NULL, name TEXT NOT NULL, extra TEXT NOT NULL) STRICT;
INSERT INTO "person" VALUES(3,1,'RW',1048576,0,'','','RW','R. Work (invented)','');
CREATE TABLE piece (seq INTEGER PRIMARY KEY REFERENCES journal (seq) DEFERRABLE INITIALLY DEFERRED, job INTEGER NOT NULL REFERENCES job (seq) DEFERRABLE INITIALLY DEFERRED, key TEXT NOT NULL, rank INTEGER NOT NULL, removed INTEGER NOT NULL CHECK (removed IN (0, 1)), changed_by TEXT NOT NULL, changed_at TEXT NOT NULL, serial TEXT NOT NULL, first_article INTEGER NOT NULL, extra TEXT NOT NULL, disposition TEXT NOT NULL DEFAULT '', disposition_note TEXT NOT NULL DEFAULT '') STRICT;
INSERT INTO "piece" VALUES(5,1,'001',1048576,0,'','','001',0,'','','');
CREATE TABLE pin_size (seq INTEGER PRIMARY KEY REFERENCES journal (seq) DEFERRABLE INITIALLY DEFERRED, job INTEGER NOT NULL REFERENCES job (seq) DEFERRABLE INITIALLY DEFERRED, key TEXT NOT NULL, rank INTEGER NOT NULL, removed INTEGER NOT NULL CHECK (removed IN (0, 1)), changed_by TEXT NOT NULL, changed_at TEXT NOT NULL, gauge TEXT NOT NULL, size_pm INTEGER, size_form TEXT, measured_pm INTEGER, measured_form TEXT, extra TEXT NOT NULL) STRICT;
CREATE TABLE pin_trial (seq INTEGER PRIMARY KEY REFERENCES journal (seq) DEFERRABLE INITIALLY DEFERRED, job INTEGER NOT NULL REFERENCES job (seq) DEFERRABLE INITIALLY DEFERRED, id TEXT NOT NULL, piece TEXT NOT NULL, feature TEXT NOT NULL, size_pm INTEGER, size_form TEXT, pin_class TEXT NOT NULL, sign TEXT NOT NULL, went INTEGER NOT NULL, taken_by TEXT NOT NULL, taken_at TEXT NOT NULL, replaces TEXT NOT NULL, reason TEXT NOT NULL, extra TEXT NOT NULL, place INTEGER, gauge TEXT NOT NULL DEFAULT '', measured_pm INTEGER, measured_form TEXT, overdue_reason TEXT NOT NULL DEFAULT '', UNIQUE (job, id)) STRICT;
CREATE TABLE reading (seq INTEGER PRIMARY KEY REFERENCES journal (seq) DEFERRABLE INITIALLY DEFERRED, job INTEGER NOT NULL REFERENCES job (seq) DEFERRABLE INITIALLY DEFERRED, id TEXT NOT NULL, piece TEXT NOT NULL, feature TEXT NOT NULL, place INTEGER NOT NULL, station TEXT NOT NULL, value_pm INTEGER, value_form TEXT, outcome TEXT NOT NULL, dx_pm INTEGER, dx_form TEXT, dy_pm INTEGER, dy_form TEXT, typed TEXT NOT NULL, method TEXT NOT NULL, part_temp_count INTEGER, part_temp_form TEXT, gauge_temp_count INTEGER, gauge_temp_form TEXT, taken_by TEXT NOT NULL, taken_at TEXT NOT NULL, replaces TEXT NOT NULL, reason TEXT NOT NULL, extra TEXT NOT NULL, overdue_reason TEXT NOT NULL DEFAULT '', UNIQUE (job, id)) STRICT;
INSERT INTO "reading" VALUES(6,1,'1','001','1',1,'',25012000000,'mm.3','',NULL,NULL,NULL,NULL,'','',NULL,NULL,NULL,NULL,'RW','2026-05-04T09:12:33Z','','','','');
CREATE TABLE report_field (seq INTEGER PRIMARY KEY REFERENCES journal (seq) DEFERRABLE INITIALLY DEFERRED, job INTEGER NOT NULL REFERENCES job (seq) DEFERRABLE INITIALLY DEFERRED, key TEXT NOT NULL, rank INTEGER NOT NULL, removed INTEGER NOT NULL CHECK (removed IN (0, 1)), changed_by TEXT NOT NULL, changed_at TEXT NOT NULL, name TEXT NOT NULL, value TEXT NOT NULL, extra TEXT NOT NULL) STRICT;
CREATE TABLE seal (n INTEGER PRIMARY KEY AUTOINCREMENT, seq INTEGER NOT NULL REFERENCES journal (seq), hash BLOB NOT NULL CHECK (length (hash) = 32)) STRICT;
INSERT INTO "seal" VALUES(1,6,X'956EA7D275AA5325E4E62D67B7DB8DF1D7D88677718CF433BB6F420718F9A4AE');
INSERT INTO "seal" VALUES(2,9,X'A8CBF0D427D110FD2D52445B1AFB5D4C4971C668ACCD3FFE93474A582E3F9B03');
INSERT INTO "seal" VALUES(3,12,X'D512A8B3C19707FB87D2CC36680F764C632BE0EA1923EF7F6BEE20F799292517');
CREATE TABLE shop_content (seq INTEGER PRIMARY KEY REFERENCES journal (seq) DEFERRABLE INITIALLY DEFERRED, job INTEGER NOT NULL CHECK (job = 0), digest TEXT NOT NULL UNIQUE, length INTEGER NOT NULL, bytes BLOB NOT NULL) STRICT;
CREATE TABLE signature (seq INTEGER PRIMARY KEY REFERENCES journal (seq) DEFERRABLE INITIALLY DEFERRED, job INTEGER NOT NULL REFERENCES job (seq) DEFERRABLE INITIALLY DEFERRED, key TEXT NOT NULL, rank INTEGER NOT NULL, removed INTEGER NOT NULL CHECK (removed IN (0, 1)), changed_by TEXT NOT NULL, changed_at TEXT NOT NULL, signed_by TEXT NOT NULL, role TEXT NOT NULL, signed_at TEXT NOT NULL, digest TEXT NOT NULL, extra TEXT NOT NULL, report TEXT NOT NULL DEFAULT '', pages TEXT NOT NULL DEFAULT '', workbook TEXT NOT NULL DEFAULT '') STRICT;
CREATE TABLE study (seq INTEGER PRIMARY KEY REFERENCES journal (seq) DEFERRABLE INITIALLY DEFERRED, job INTEGER NOT NULL REFERENCES job (seq) DEFERRABLE INITIALLY DEFERRED, key TEXT NOT NULL, rank INTEGER NOT NULL, removed INTEGER NOT NULL CHECK (removed IN (0, 1)), changed_by TEXT NOT NULL, changed_at TEXT NOT NULL, name TEXT NOT NULL, feature TEXT NOT NULL, method TEXT NOT NULL, unit TEXT NOT NULL, pieces TEXT NOT NULL, people TEXT NOT NULL, repeats_count INTEGER, repeats_form TEXT, seed_count INTEGER, seed_form TEXT, band_pm INTEGER, band_form TEXT, begun_at TEXT NOT NULL, note TEXT NOT NULL, extra TEXT NOT NULL) STRICT;
CREATE TABLE study_reading (seq INTEGER PRIMARY KEY REFERENCES journal (seq) DEFERRABLE INITIALLY DEFERRED, job INTEGER NOT NULL REFERENCES job (seq) DEFERRABLE INITIALLY DEFERRED, key TEXT NOT NULL, rank INTEGER NOT NULL, removed INTEGER NOT NULL CHECK (removed IN (0, 1)), changed_by TEXT NOT NULL, changed_at TEXT NOT NULL, study TEXT NOT NULL, piece TEXT NOT NULL, person TEXT NOT NULL, trial_count INTEGER, trial_form TEXT, value_pm INTEGER, value_form TEXT, typed TEXT NOT NULL, taken_at TEXT NOT NULL, extra TEXT NOT NULL) STRICT;
CREATE TABLE sub_part (seq INTEGER PRIMARY KEY REFERENCES journal (seq) DEFERRABLE INITIALLY DEFERRED, job INTEGER NOT NULL REFERENCES job (seq) DEFERRABLE INITIALLY DEFERRED, key TEXT NOT NULL, rank INTEGER NOT NULL, removed INTEGER NOT NULL CHECK (removed IN (0, 1)), changed_by TEXT NOT NULL, changed_at TEXT NOT NULL, number TEXT NOT NULL, name TEXT NOT NULL, serial TEXT NOT NULL, report TEXT NOT NULL, extra TEXT NOT NULL) STRICT;
CREATE TABLE supply (seq INTEGER PRIMARY KEY REFERENCES journal (seq) DEFERRABLE INITIALLY DEFERRED, job INTEGER NOT NULL REFERENCES job (seq) DEFERRABLE INITIALLY DEFERRED, key TEXT NOT NULL, rank INTEGER NOT NULL, removed INTEGER NOT NULL CHECK (removed IN (0, 1)), changed_by TEXT NOT NULL, changed_at TEXT NOT NULL, kind TEXT NOT NULL, name TEXT NOT NULL, specification TEXT NOT NULL, code TEXT NOT NULL, supplier TEXT NOT NULL, approval TEXT NOT NULL, certificate TEXT NOT NULL, note TEXT NOT NULL, extra TEXT NOT NULL) STRICT;
CREATE TABLE template (seq INTEGER PRIMARY KEY REFERENCES journal (seq) DEFERRABLE INITIALLY DEFERRED, job INTEGER NOT NULL CHECK (job = 0), changed_by TEXT NOT NULL, changed_at TEXT NOT NULL, name TEXT NOT NULL, address TEXT NOT NULL, accent TEXT NOT NULL, hidden TEXT NOT NULL, logo TEXT NOT NULL, logo_media TEXT NOT NULL) STRICT;
INSERT INTO "template" VALUES(7,0,'','2026-11-30T18:07:13Z','Example Precision (invented)','1 Mill Lane','#1a5f7a','class','','');
INSERT INTO "template" VALUES(10,0,'','2026-11-30T18:07:14Z','Example Precision (invented)','2 Mill Lane','#a01e28','class','','');
CREATE TABLE template_field (seq INTEGER PRIMARY KEY REFERENCES journal (seq) DEFERRABLE INITIALLY DEFERRED, job INTEGER NOT NULL CHECK (job = 0), template INTEGER NOT NULL REFERENCES template (seq) DEFERRABLE INITIALLY DEFERRED, name TEXT NOT NULL, required INTEGER NOT NULL CHECK (required IN (0, 1))) STRICT;
INSERT INTO "template_field" VALUES(8,0,7,'Heat number',1);
INSERT INTO "template_field" VALUES(11,0,10,'Heat number',1);
CREATE TABLE template_text (seq INTEGER PRIMARY KEY REFERENCES journal (seq) DEFERRABLE INITIALLY DEFERRED, job INTEGER NOT NULL CHECK (job = 0), template INTEGER NOT NULL REFERENCES template (seq) DEFERRABLE INITIALLY DEFERRED, statement INTEGER NOT NULL, place TEXT NOT NULL, language TEXT NOT NULL, text TEXT NOT NULL) STRICT;
INSERT INTO "template_text" VALUES(9,0,7,1,'before signatures','','We made it.');
INSERT INTO "template_text" VALUES(12,0,10,1,'before signatures','','We made it.');
CREATE TABLE tool (seq INTEGER PRIMARY KEY REFERENCES journal (seq) DEFERRABLE INITIALLY DEFERRED, job INTEGER NOT NULL REFERENCES job (seq) DEFERRABLE INITIALLY DEFERRED, key TEXT NOT NULL, rank INTEGER NOT NULL, removed INTEGER NOT NULL CHECK (removed IN (0, 1)), changed_by TEXT NOT NULL, changed_at TEXT NOT NULL, name TEXT NOT NULL, unit TEXT NOT NULL, reads TEXT NOT NULL, graduation_pm INTEGER, graduation_form TEXT, least_cut_pm INTEGER, least_cut_form TEXT, backlash_pm INTEGER, backlash_form TEXT, spring_passes_count INTEGER, spring_passes_form TEXT, note TEXT NOT NULL, extra TEXT NOT NULL, offset_step_pm INTEGER, offset_step_form TEXT) STRICT;
CREATE TABLE withdrawal (seq INTEGER PRIMARY KEY REFERENCES journal (seq) DEFERRABLE INITIALLY DEFERRED, job INTEGER NOT NULL REFERENCES job (seq) DEFERRABLE INITIALLY DEFERRED, target TEXT NOT NULL, id TEXT NOT NULL, done_by TEXT NOT NULL, done_at TEXT NOT NULL, reason TEXT NOT NULL, extra TEXT NOT NULL, UNIQUE (job, target, id)) STRICT;
CREATE TRIGGER journal_stays BEFORE UPDATE ON journal BEGIN SELECT raise (ABORT, 'the book only grows: no row of journal can be changed'); END;
CREATE TRIGGER journal_remains BEFORE DELETE ON journal BEGIN SELECT raise (ABORT, 'the book only grows: no row of journal can be deleted'); END;
CREATE TRIGGER journal_follows BEFORE INSERT ON journal WHEN new.seq <= (SELECT max (seq) FROM journal) BEGIN SELECT raise (FAIL, 'the book only grows: that row of journal is already there'); END;
CREATE TRIGGER seal_stays BEFORE UPDATE ON seal BEGIN SELECT raise (ABORT, 'the book only grows: no row of seal can be changed'); END;
CREATE TRIGGER seal_remains BEFORE DELETE ON seal BEGIN SELECT raise (ABORT, 'the book only grows: no row of seal can be deleted'); END;
CREATE TRIGGER seal_follows BEFORE INSERT ON seal WHEN new.n > 0 AND new.n <= (SELECT max (n) FROM seal) BEGIN SELECT raise (FAIL, 'the book only grows: that row of seal is already there'); END;
CREATE TRIGGER job_stays BEFORE UPDATE ON job BEGIN SELECT raise (ABORT, 'the book only grows: no row of job can be changed'); END;
CREATE TRIGGER job_remains BEFORE DELETE ON job BEGIN SELECT raise (ABORT, 'the book only grows: no row of job can be deleted'); END;
CREATE TRIGGER job_follows BEFORE INSERT ON job WHEN new.seq <= (SELECT max (seq) FROM job) OR EXISTS (SELECT 1 FROM job WHERE id = new.id) BEGIN SELECT raise (FAIL, 'the book only grows: that row of job is already there'); END;
CREATE INDEX facts_key ON facts (job, key);
CREATE VIEW current_facts AS SELECT * FROM facts AS v WHERE removed = 0 AND seq = (SELECT max (seq) FROM facts AS w WHERE w.job = v.job AND w.key = v.key);
CREATE TRIGGER facts_stays BEFORE UPDATE ON facts BEGIN SELECT raise (ABORT, 'the book only grows: no row of facts can be changed'); END;
CREATE TRIGGER facts_remains BEFORE DELETE ON facts BEGIN SELECT raise (ABORT, 'the book only grows: no row of facts can be deleted'); END;
CREATE TRIGGER facts_follows BEFORE INSERT ON facts WHEN new.seq <= (SELECT max (seq) FROM facts) BEGIN SELECT raise (FAIL, 'the book only grows: that row of facts is already there'); END;
CREATE INDEX person_key ON person (job, key);
CREATE VIEW current_person AS SELECT * FROM person AS v WHERE removed = 0 AND seq = (SELECT max (seq) FROM person AS w WHERE w.job = v.job AND w.key = v.key);
CREATE TRIGGER person_stays BEFORE UPDATE ON person BEGIN SELECT raise (ABORT, 'the book only grows: no row of person can be changed'); END;
CREATE TRIGGER person_remains BEFORE DELETE ON person BEGIN SELECT raise (ABORT, 'the book only grows: no row of person can be deleted'); END;
CREATE TRIGGER person_follows BEFORE INSERT ON person WHEN new.seq <= (SELECT max (seq) FROM person) BEGIN SELECT raise (FAIL, 'the book only grows: that row of person is already there'); END;
CREATE INDEX gauge_key ON gauge (job, key);
CREATE VIEW current_gauge AS SELECT * FROM gauge AS v WHERE removed = 0 AND seq = (SELECT max (seq) FROM gauge AS w WHERE w.job = v.job AND w.key = v.key);
CREATE TRIGGER gauge_stays BEFORE UPDATE ON gauge BEGIN SELECT raise (ABORT, 'the book only grows: no row of gauge can be changed'); END;
CREATE TRIGGER gauge_remains BEFORE DELETE ON gauge BEGIN SELECT raise (ABORT, 'the book only grows: no row of gauge can be deleted'); END;
CREATE TRIGGER gauge_follows BEFORE INSERT ON gauge WHEN new.seq <= (SELECT max (seq) FROM gauge) BEGIN SELECT raise (FAIL, 'the book only grows: that row of gauge is already there'); END;
CREATE INDEX method_key ON method (job, key);
CREATE VIEW current_method AS SELECT * FROM method AS v WHERE removed = 0 AND seq = (SELECT max (seq) FROM method AS w WHERE w.job = v.job AND w.key = v.key);
CREATE TRIGGER method_stays BEFORE UPDATE ON method BEGIN SELECT raise (ABORT, 'the book only grows: no row of method can be changed'); END;
CREATE TRIGGER method_remains BEFORE DELETE ON method BEGIN SELECT raise (ABORT, 'the book only grows: no row of method can be deleted'); END;
CREATE TRIGGER method_follows BEFORE INSERT ON method WHEN new.seq <= (SELECT max (seq) FROM method) BEGIN SELECT raise (FAIL, 'the book only grows: that row of method is already there'); END;
CREATE INDEX feature_key ON feature (job, key);
CREATE VIEW current_feature AS SELECT * FROM feature AS v WHERE removed = 0 AND seq = (SELECT max (seq) FROM feature AS w WHERE w.job = v.job AND w.key = v.key);
CREATE TRIGGER feature_stays BEFORE UPDATE ON feature BEGIN SELECT raise (ABORT, 'the book only grows: no row of feature can be changed'); END;
CREATE TRIGGER feature_remains BEFORE DELETE ON feature BEGIN SELECT raise (ABORT, 'the book only grows: no row of feature can be deleted'); END;
CREATE TRIGGER feature_follows BEFORE INSERT ON feature WHEN new.seq <= (SELECT max (seq) FROM feature) BEGIN SELECT raise (FAIL, 'the book only grows: that row of feature is already there'); END;
CREATE INDEX piece_key ON piece (job, key);
CREATE VIEW current_piece AS SELECT * FROM piece AS v WHERE removed = 0 AND seq = (SELECT max (seq) FROM piece AS w WHERE w.job = v.job AND w.key = v.key);
CREATE TRIGGER piece_stays BEFORE UPDATE ON piece BEGIN SELECT raise (ABORT, 'the book only grows: no row of piece can be changed'); END;
CREATE TRIGGER piece_remains BEFORE DELETE ON piece BEGIN SELECT raise (ABORT, 'the book only grows: no row of piece can be deleted'); END;
CREATE TRIGGER piece_follows BEFORE INSERT ON piece WHEN new.seq <= (SELECT max (seq) FROM piece) BEGIN SELECT raise (FAIL, 'the book only grows: that row of piece is already there'); END;
CREATE INDEX event_key ON event (job, key);
CREATE VIEW current_event AS SELECT * FROM event AS v WHERE removed = 0 AND seq = (SELECT max (seq) FROM event AS w WHERE w.job = v.job AND w.key = v.key);
CREATE TRIGGER event_stays BEFORE UPDATE ON event BEGIN SELECT raise (ABORT, 'the book only grows: no row of event can be changed'); END;
CREATE TRIGGER event_remains BEFORE DELETE ON event BEGIN SELECT raise (ABORT, 'the book only grows: no row of event can be deleted'); END;
CREATE TRIGGER event_follows BEFORE INSERT ON event WHEN new.seq <= (SELECT max (seq) FROM event) BEGIN SELECT raise (FAIL, 'the book only grows: that row of event is already there'); END;
CREATE INDEX nonconformance_key ON nonconformance (job, key);
CREATE VIEW current_nonconformance AS SELECT * FROM nonconformance AS v WHERE removed = 0 AND seq = (SELECT max (seq) FROM nonconformance AS w WHERE w.job = v.job AND w.key = v.key);
CREATE TRIGGER nonconformance_stays BEFORE UPDATE ON nonconformance BEGIN SELECT raise (ABORT, 'the book only grows: no row of nonconformance can be changed'); END;
CREATE TRIGGER nonconformance_remains BEFORE DELETE ON nonconformance BEGIN SELECT raise (ABORT, 'the book only grows: no row of nonconformance can be deleted'); END;
CREATE TRIGGER nonconformance_follows BEFORE INSERT ON nonconformance WHEN new.seq <= (SELECT max (seq) FROM nonconformance) BEGIN SELECT raise (FAIL, 'the book only grows: that row of nonconformance is already there'); END;
CREATE INDEX signature_key ON signature (job, key);
CREATE VIEW current_signature AS SELECT * FROM signature AS v WHERE removed = 0 AND seq = (SELECT max (seq) FROM signature AS w WHERE w.job = v.job AND w.key = v.key);
CREATE TRIGGER signature_stays BEFORE UPDATE ON signature BEGIN SELECT raise (ABORT, 'the book only grows: no row of signature can be changed'); END;
CREATE TRIGGER signature_remains BEFORE DELETE ON signature BEGIN SELECT raise (ABORT, 'the book only grows: no row of signature can be deleted'); END;
CREATE TRIGGER signature_follows BEFORE INSERT ON signature WHEN new.seq <= (SELECT max (seq) FROM signature) BEGIN SELECT raise (FAIL, 'the book only grows: that row of signature is already there'); END;
CREATE INDEX reading_job ON reading (job);
CREATE UNIQUE INDEX reading_correction ON reading (job, replaces) WHERE replaces <> '';
CREATE TRIGGER reading_stays BEFORE UPDATE ON reading BEGIN SELECT raise (ABORT, 'the book only grows: no row of reading can be changed'); END;
CREATE TRIGGER reading_remains BEFORE DELETE ON reading BEGIN SELECT raise (ABORT, 'the book only grows: no row of reading can be deleted'); END;
CREATE TRIGGER reading_follows BEFORE INSERT ON reading WHEN new.seq <= (SELECT max (seq) FROM reading) OR EXISTS (SELECT 1 FROM reading WHERE job = new.job AND id = new.id) BEGIN SELECT raise (FAIL, 'the book only grows: that row of reading is already there'); END;
CREATE INDEX pin_trial_job ON pin_trial (job);
CREATE UNIQUE INDEX pin_trial_correction ON pin_trial (job, replaces) WHERE replaces <> '';
CREATE TRIGGER pin_trial_stays BEFORE UPDATE ON pin_trial BEGIN SELECT raise (ABORT, 'the book only grows: no row of pin_trial can be changed'); END;
CREATE TRIGGER pin_trial_remains BEFORE DELETE ON pin_trial BEGIN SELECT raise (ABORT, 'the book only grows: no row of pin_trial can be deleted'); END;
CREATE TRIGGER pin_trial_follows BEFORE INSERT ON pin_trial WHEN new.seq <= (SELECT max (seq) FROM pin_trial) OR EXISTS (SELECT 1 FROM pin_trial WHERE job = new.job AND id = new.id) BEGIN SELECT raise (FAIL, 'the book only grows: that row of pin_trial is already there'); END;
CREATE INDEX cut_job ON cut (job);
CREATE UNIQUE INDEX cut_correction ON cut (job, replaces) WHERE replaces <> '';
CREATE TRIGGER cut_stays BEFORE UPDATE ON cut BEGIN SELECT raise (ABORT, 'the book only grows: no row of cut can be changed'); END;
CREATE TRIGGER cut_remains BEFORE DELETE ON cut BEGIN SELECT raise (ABORT, 'the book only grows: no row of cut can be deleted'); END;
CREATE TRIGGER cut_follows BEFORE INSERT ON cut WHEN new.seq <= (SELECT max (seq) FROM cut) OR EXISTS (SELECT 1 FROM cut WHERE job = new.job AND id = new.id) BEGIN SELECT raise (FAIL, 'the book only grows: that row of cut is already there'); END;
CREATE INDEX calibration_key ON calibration (job, key);
CREATE VIEW current_calibration AS SELECT * FROM calibration AS v WHERE removed = 0 AND seq = (SELECT max (seq) FROM calibration AS w WHERE w.job = v.job AND w.key = v.key);
CREATE TRIGGER calibration_stays BEFORE UPDATE ON calibration BEGIN SELECT raise (ABORT, 'the book only grows: no row of calibration can be changed'); END;
CREATE TRIGGER calibration_remains BEFORE DELETE ON calibration BEGIN SELECT raise (ABORT, 'the book only grows: no row of calibration can be deleted'); END;
CREATE TRIGGER calibration_follows BEFORE INSERT ON calibration WHEN new.seq <= (SELECT max (seq) FROM calibration) BEGIN SELECT raise (FAIL, 'the book only grows: that row of calibration is already there'); END;
CREATE INDEX gauge_check_key ON gauge_check (job, key);
CREATE VIEW current_gauge_check AS SELECT * FROM gauge_check AS v WHERE removed = 0 AND seq = (SELECT max (seq) FROM gauge_check AS w WHERE w.job = v.job AND w.key = v.key);
CREATE TRIGGER gauge_check_stays BEFORE UPDATE ON gauge_check BEGIN SELECT raise (ABORT, 'the book only grows: no row of gauge_check can be changed'); END;
CREATE TRIGGER gauge_check_remains BEFORE DELETE ON gauge_check BEGIN SELECT raise (ABORT, 'the book only grows: no row of gauge_check can be deleted'); END;
CREATE TRIGGER gauge_check_follows BEFORE INSERT ON gauge_check WHEN new.seq <= (SELECT max (seq) FROM gauge_check) BEGIN SELECT raise (FAIL, 'the book only grows: that row of gauge_check is already there'); END;
CREATE INDEX pin_size_key ON pin_size (job, key);
CREATE VIEW current_pin_size AS SELECT * FROM pin_size AS v WHERE removed = 0 AND seq = (SELECT max (seq) FROM pin_size AS w WHERE w.job = v.job AND w.key = v.key);
CREATE TRIGGER pin_size_stays BEFORE UPDATE ON pin_size BEGIN SELECT raise (ABORT, 'the book only grows: no row of pin_size can be changed'); END;
CREATE TRIGGER pin_size_remains BEFORE DELETE ON pin_size BEGIN SELECT raise (ABORT, 'the book only grows: no row of pin_size can be deleted'); END;
CREATE TRIGGER pin_size_follows BEFORE INSERT ON pin_size WHEN new.seq <= (SELECT max (seq) FROM pin_size) BEGIN SELECT raise (FAIL, 'the book only grows: that row of pin_size is already there'); END;
CREATE INDEX budget_line_key ON budget_line (job, key);
CREATE VIEW current_budget_line AS SELECT * FROM budget_line AS v WHERE removed = 0 AND seq = (SELECT max (seq) FROM budget_line AS w WHERE w.job = v.job AND w.key = v.key);
CREATE TRIGGER budget_line_stays BEFORE UPDATE ON budget_line BEGIN SELECT raise (ABORT, 'the book only grows: no row of budget_line can be changed'); END;
CREATE TRIGGER budget_line_remains BEFORE DELETE ON budget_line BEGIN SELECT raise (ABORT, 'the book only grows: no row of budget_line can be deleted'); END;
CREATE TRIGGER budget_line_follows BEFORE INSERT ON budget_line WHEN new.seq <= (SELECT max (seq) FROM budget_line) BEGIN SELECT raise (FAIL, 'the book only grows: that row of budget_line is already there'); END;
CREATE INDEX study_key ON study (job, key);
CREATE VIEW current_study AS SELECT * FROM study AS v WHERE removed = 0 AND seq = (SELECT max (seq) FROM study AS w WHERE w.job = v.job AND w.key = v.key);
CREATE TRIGGER study_stays BEFORE UPDATE ON study BEGIN SELECT raise (ABORT, 'the book only grows: no row of study can be changed'); END;
CREATE TRIGGER study_remains BEFORE DELETE ON study BEGIN SELECT raise (ABORT, 'the book only grows: no row of study can be deleted'); END;
CREATE TRIGGER study_follows BEFORE INSERT ON study WHEN new.seq <= (SELECT max (seq) FROM study) BEGIN SELECT raise (FAIL, 'the book only grows: that row of study is already there'); END;
CREATE INDEX study_reading_key ON study_reading (job, key);
CREATE VIEW current_study_reading AS SELECT * FROM study_reading AS v WHERE removed = 0 AND seq = (SELECT max (seq) FROM study_reading AS w WHERE w.job = v.job AND w.key = v.key);
CREATE TRIGGER study_reading_stays BEFORE UPDATE ON study_reading BEGIN SELECT raise (ABORT, 'the book only grows: no row of study_reading can be changed'); END;
CREATE TRIGGER study_reading_remains BEFORE DELETE ON study_reading BEGIN SELECT raise (ABORT, 'the book only grows: no row of study_reading can be deleted'); END;
CREATE TRIGGER study_reading_follows BEFORE INSERT ON study_reading WHEN new.seq <= (SELECT max (seq) FROM study_reading) BEGIN SELECT raise (FAIL, 'the book only grows: that row of study_reading is already there'); END;
CREATE INDEX tool_key ON tool (job, key);
CREATE VIEW current_tool AS SELECT * FROM tool AS v WHERE removed = 0 AND seq = (SELECT max (seq) FROM tool AS w WHERE w.job = v.job AND w.key = v.key);
CREATE TRIGGER tool_stays BEFORE UPDATE ON tool BEGIN SELECT raise (ABORT, 'the book only grows: no row of tool can be changed'); END;
CREATE TRIGGER tool_remains BEFORE DELETE ON tool BEGIN SELECT raise (ABORT, 'the book only grows: no row of tool can be deleted'); END;
CREATE TRIGGER tool_follows BEFORE INSERT ON tool WHEN new.seq <= (SELECT max (seq) FROM tool) BEGIN SELECT raise (FAIL, 'the book only grows: that row of tool is already there'); END;
CREATE INDEX material_key ON material (job, key);
CREATE VIEW current_material AS SELECT * FROM material AS v WHERE removed = 0 AND seq = (SELECT max (seq) FROM material AS w WHERE w.job = v.job AND w.key = v.key);
CREATE TRIGGER material_stays BEFORE UPDATE ON material BEGIN SELECT raise (ABORT, 'the book only grows: no row of material can be changed'); END;
CREATE TRIGGER material_remains BEFORE DELETE ON material BEGIN SELECT raise (ABORT, 'the book only grows: no row of material can be deleted'); END;
CREATE TRIGGER material_follows BEFORE INSERT ON material WHEN new.seq <= (SELECT max (seq) FROM material) BEGIN SELECT raise (FAIL, 'the book only grows: that row of material is already there'); END;
CREATE INDEX mate_key ON mate (job, key);
CREATE VIEW current_mate AS SELECT * FROM mate AS v WHERE removed = 0 AND seq = (SELECT max (seq) FROM mate AS w WHERE w.job = v.job AND w.key = v.key);
CREATE TRIGGER mate_stays BEFORE UPDATE ON mate BEGIN SELECT raise (ABORT, 'the book only grows: no row of mate can be changed'); END;
CREATE TRIGGER mate_remains BEFORE DELETE ON mate BEGIN SELECT raise (ABORT, 'the book only grows: no row of mate can be deleted'); END;
CREATE TRIGGER mate_follows BEFORE INSERT ON mate WHEN new.seq <= (SELECT max (seq) FROM mate) BEGIN SELECT raise (FAIL, 'the book only grows: that row of mate is already there'); END;
CREATE TRIGGER withdrawal_stays BEFORE UPDATE ON withdrawal BEGIN SELECT raise (ABORT, 'the book only grows: no row of withdrawal can be changed'); END;
CREATE TRIGGER withdrawal_remains BEFORE DELETE ON withdrawal BEGIN SELECT raise (ABORT, 'the book only grows: no row of withdrawal can be deleted'); END;
CREATE TRIGGER withdrawal_follows BEFORE INSERT ON withdrawal WHEN new.seq <= (SELECT max (seq) FROM withdrawal) OR EXISTS (SELECT 1 FROM withdrawal WHERE job = new.job AND target = new.target AND id = new.id) BEGIN SELECT raise (FAIL, 'the book only grows: that row of withdrawal is already there'); END;
CREATE INDEX supply_key ON supply (job, key);
CREATE VIEW current_supply AS SELECT * FROM supply AS v WHERE removed = 0 AND seq = (SELECT max (seq) FROM supply AS w WHERE w.job = v.job AND w.key = v.key);
CREATE TRIGGER supply_stays BEFORE UPDATE ON supply BEGIN SELECT raise (ABORT, 'the book only grows: no row of supply can be changed'); END;
CREATE TRIGGER supply_remains BEFORE DELETE ON supply BEGIN SELECT raise (ABORT, 'the book only grows: no row of supply can be deleted'); END;
CREATE TRIGGER supply_follows BEFORE INSERT ON supply WHEN new.seq <= (SELECT max (seq) FROM supply) BEGIN SELECT raise (FAIL, 'the book only grows: that row of supply is already there'); END;
CREATE INDEX sub_part_key ON sub_part (job, key);
CREATE VIEW current_sub_part AS SELECT * FROM sub_part AS v WHERE removed = 0 AND seq = (SELECT max (seq) FROM sub_part AS w WHERE w.job = v.job AND w.key = v.key);
CREATE TRIGGER sub_part_stays BEFORE UPDATE ON sub_part BEGIN SELECT raise (ABORT, 'the book only grows: no row of sub_part can be changed'); END;
CREATE TRIGGER sub_part_remains BEFORE DELETE ON sub_part BEGIN SELECT raise (ABORT, 'the book only grows: no row of sub_part can be deleted'); END;
CREATE TRIGGER sub_part_follows BEFORE INSERT ON sub_part WHEN new.seq <= (SELECT max (seq) FROM sub_part) BEGIN SELECT raise (FAIL, 'the book only grows: that row of sub_part is already there'); END;
CREATE INDEX report_field_key ON report_field (job, key);
CREATE VIEW current_report_field AS SELECT * FROM report_field AS v WHERE removed = 0 AND seq = (SELECT max (seq) FROM report_field AS w WHERE w.job = v.job AND w.key = v.key);
CREATE TRIGGER report_field_stays BEFORE UPDATE ON report_field BEGIN SELECT raise (ABORT, 'the book only grows: no row of report_field can be changed'); END;
CREATE TRIGGER report_field_remains BEFORE DELETE ON report_field BEGIN SELECT raise (ABORT, 'the book only grows: no row of report_field can be deleted'); END;
CREATE TRIGGER report_field_follows BEFORE INSERT ON report_field WHEN new.seq <= (SELECT max (seq) FROM report_field) BEGIN SELECT raise (FAIL, 'the book only grows: that row of report_field is already there'); END;
CREATE INDEX drawing_key ON drawing (job, key);
CREATE VIEW current_drawing AS SELECT * FROM drawing AS v WHERE removed = 0 AND seq = (SELECT max (seq) FROM drawing AS w WHERE w.job = v.job AND w.key = v.key);
CREATE TRIGGER drawing_stays BEFORE UPDATE ON drawing BEGIN SELECT raise (ABORT, 'the book only grows: no row of drawing can be changed'); END;
CREATE TRIGGER drawing_remains BEFORE DELETE ON drawing BEGIN SELECT raise (ABORT, 'the book only grows: no row of drawing can be deleted'); END;
CREATE TRIGGER drawing_follows BEFORE INSERT ON drawing WHEN new.seq <= (SELECT max (seq) FROM drawing) BEGIN SELECT raise (FAIL, 'the book only grows: that row of drawing is already there'); END;
CREATE INDEX balloon_key ON balloon (job, key);
CREATE VIEW current_balloon AS SELECT * FROM balloon AS v WHERE removed = 0 AND seq = (SELECT max (seq) FROM balloon AS w WHERE w.job = v.job AND w.key = v.key);
CREATE TRIGGER balloon_stays BEFORE UPDATE ON balloon BEGIN SELECT raise (ABORT, 'the book only grows: no row of balloon can be changed'); END;
CREATE TRIGGER balloon_remains BEFORE DELETE ON balloon BEGIN SELECT raise (ABORT, 'the book only grows: no row of balloon can be deleted'); END;
CREATE TRIGGER balloon_follows BEFORE INSERT ON balloon WHEN new.seq <= (SELECT max (seq) FROM balloon) BEGIN SELECT raise (FAIL, 'the book only grows: that row of balloon is already there'); END;
CREATE TRIGGER content_stays BEFORE UPDATE ON content BEGIN SELECT raise (ABORT, 'the book only grows: no row of content can be changed'); END;
CREATE TRIGGER content_remains BEFORE DELETE ON content BEGIN SELECT raise (ABORT, 'the book only grows: no row of content can be deleted'); END;
CREATE TRIGGER content_follows BEFORE INSERT ON content WHEN new.seq <= (SELECT max (seq) FROM content) OR EXISTS (SELECT 1 FROM content WHERE job = new.job AND digest = new.digest) BEGIN SELECT raise (FAIL, 'the book only grows: that row of content is already there'); END;
CREATE TRIGGER shop_content_stays BEFORE UPDATE ON shop_content BEGIN SELECT raise (ABORT, 'the book only grows: no row of shop_content can be changed'); END;
CREATE TRIGGER shop_content_remains BEFORE DELETE ON shop_content BEGIN SELECT raise (ABORT, 'the book only grows: no row of shop_content can be deleted'); END;
CREATE TRIGGER shop_content_follows BEFORE INSERT ON shop_content WHEN new.seq <= (SELECT max (seq) FROM shop_content) OR EXISTS (SELECT 1 FROM shop_content WHERE digest = new.digest) BEGIN SELECT raise (FAIL, 'the book only grows: that row of shop_content is already there'); END;
CREATE TRIGGER template_stays BEFORE UPDATE ON template BEGIN SELECT raise (ABORT, 'the book only grows: no row of template can be changed'); END;
CREATE TRIGGER template_remains BEFORE DELETE ON template BEGIN SELECT raise (ABORT, 'the book only grows: no row of template can be deleted'); END;
CREATE TRIGGER template_follows BEFORE INSERT ON template WHEN new.seq <= (SELECT max (seq) FROM template) BEGIN SELECT raise (FAIL, 'the book only grows: that row of template is already there'); END;
CREATE TRIGGER template_field_stays BEFORE UPDATE ON template_field BEGIN SELECT raise (ABORT, 'the book only grows: no row of template_field can be changed'); END;
CREATE TRIGGER template_field_remains BEFORE DELETE ON template_field BEGIN SELECT raise (ABORT, 'the book only grows: no row of template_field can be deleted'); END;
CREATE TRIGGER template_field_follows BEFORE INSERT ON template_field WHEN new.seq <= (SELECT max (seq) FROM template_field) BEGIN SELECT raise (FAIL, 'the book only grows: that row of template_field is already there'); END;
CREATE INDEX template_field_of ON template_field (template);
CREATE TRIGGER template_text_stays BEFORE UPDATE ON template_text BEGIN SELECT raise (ABORT, 'the book only grows: no row of template_text can be changed'); END;
CREATE TRIGGER template_text_remains BEFORE DELETE ON template_text BEGIN SELECT raise (ABORT, 'the book only grows: no row of template_text can be deleted'); END;
CREATE TRIGGER template_text_follows BEFORE INSERT ON template_text WHEN new.seq <= (SELECT max (seq) FROM template_text) BEGIN SELECT raise (FAIL, 'the book only grows: that row of template_text is already there'); END;
CREATE INDEX template_text_of ON template_text (template);
CREATE INDEX reading_method ON reading (method, taken_at);
CREATE INDEX reading_spot ON reading (job, piece, feature);
CREATE INDEX cut_tool ON cut (tool, job);
DELETE FROM "sqlite_sequence";
INSERT INTO "sqlite_sequence" VALUES('seal',3);
COMMIT;
