-- Lets a role of the database into one venue of a house and no other. Run it as the
-- role that made the house, with bar_role and 'bar' replaced by the names of the
-- role and of the venue; once for each role, and again after an update of the
-- program that changes the tables. Whoever owns the tables sees all venues.

GRANT USAGE ON SCHEMA counterpour_house TO bar_role;
GRANT SELECT ON ALL TABLES IN SCHEMA counterpour_house TO bar_role;
GRANT UPDATE ON counterpour_house.venue TO bar_role;
GRANT INSERT, UPDATE ON counterpour_house.record TO bar_role;
GRANT INSERT ON counterpour_house.change TO bar_role;
GRANT INSERT, DELETE ON counterpour_house.link TO bar_role;
GRANT INSERT, UPDATE, DELETE ON counterpour_house.ephemeral TO bar_role;

ALTER TABLE counterpour_house.venue ENABLE ROW LEVEL SECURITY;
ALTER TABLE counterpour_house.record ENABLE ROW LEVEL SECURITY;
ALTER TABLE counterpour_house.change ENABLE ROW LEVEL SECURITY;
ALTER TABLE counterpour_house.link ENABLE ROW LEVEL SECURITY;
ALTER TABLE counterpour_house.ephemeral ENABLE ROW LEVEL SECURITY;

DROP POLICY IF EXISTS bar_role ON counterpour_house.venue;
DROP POLICY IF EXISTS bar_role ON counterpour_house.record;
DROP POLICY IF EXISTS bar_role ON counterpour_house.change;
DROP POLICY IF EXISTS bar_role ON counterpour_house.link;
DROP POLICY IF EXISTS bar_role ON counterpour_house.ephemeral;

CREATE POLICY bar_role ON counterpour_house.venue TO bar_role USING (name = 'bar');
CREATE POLICY bar_role ON counterpour_house.record TO bar_role USING (venue = 'bar');
CREATE POLICY bar_role ON counterpour_house.change TO bar_role USING (venue = 'bar');
CREATE POLICY bar_role ON counterpour_house.link TO bar_role USING (venue = 'bar');
CREATE POLICY bar_role ON counterpour_house.ephemeral TO bar_role USING (venue = 'bar');
