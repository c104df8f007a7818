-- Version 10: what is told of a person's detection comes in from other stores. The note, what it tells and the person may arrive one after
-- the other, so whom a note is of may be set once, later; taken away it is only by an erasure, as before.

DROP TRIGGER skill_only_erased;
CREATE TRIGGER skill_only_erased BEFORE UPDATE ON skill
WHEN (old.commitment IS NOT NULL AND (new.person IS NOT NULL OR new.commitment IS NOT old.commitment)) OR new.id <> old.id OR new.uid <> old.uid
    OR new.withdraws IS NOT old.withdraws OR new.content <> old.content OR new.line_chain <> old.line_chain OR new.line_number <> old.line_number
BEGIN SELECT RAISE(ABORT, 'skill_only_erased'); END;
