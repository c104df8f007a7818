-- Version 4: what a picture looks like, so that the same one sent smaller is noticed. Computed from the picture, so no part of its
-- content: 64 bits of a difference hash as a signed number; NULL where the picture cannot be shown or has no contrast.

ALTER TABLE photo ADD COLUMN looked INTEGER NOT NULL DEFAULT 0 CONSTRAINT photo_looked_flag CHECK (looked IN (0, 1));
ALTER TABLE photo ADD COLUMN likeness INTEGER CONSTRAINT photo_likeness_looked CHECK (likeness IS NULL OR looked = 1);
CREATE INDEX photo_not_looked ON photo (id) WHERE looked = 0;
CREATE INDEX photo_likeness ON photo (likeness, uid) WHERE likeness IS NOT NULL;
