-- SPDX-License-Identifier: GPL-3.0-or-later
--
-- A picture that is replaced is changed: REPLACE deletes the old one without asking its triggers.

CREATE TRIGGER picture_insert_over BEFORE INSERT ON picture
WHEN EXISTS (SELECT 1 FROM picture p WHERE p.id = NEW.id OR p.code = NEW.code)
BEGIN
  SELECT RAISE (ABORT, 'This picture is in the book already.');
END;

CREATE TRIGGER picture_content_insert_over BEFORE INSERT ON picture_content
WHEN EXISTS (SELECT 1 FROM picture_content c WHERE c.picture = NEW.picture AND c.content <> NEW.content)
BEGIN
  SELECT RAISE (ABORT, 'A picture cannot be changed: add another.');
END;
