-- Version 11: answers of practice are counted as they come in, session by session, so that the results of a cohort need not read them all.
-- What is counted here follows from `practice_item`; a trigger keeps it.

CREATE TABLE practice_count (
    session INTEGER NOT NULL CONSTRAINT practice_count_session_exists REFERENCES practice_session (id),
    kind TEXT NOT NULL,
    subject TEXT NOT NULL,
    truth TEXT NOT NULL,
    given TEXT NOT NULL,
    answers INTEGER NOT NULL CONSTRAINT practice_count_counts CHECK (answers > 0),
    CONSTRAINT practice_count_key PRIMARY KEY (session, kind, subject, truth, given)
) STRICT, WITHOUT ROWID;
INSERT INTO practice_count (session, kind, subject, truth, given, answers)
SELECT session, kind, subject, truth, given, count(*) FROM practice_item GROUP BY session, kind, subject, truth, given;

CREATE TABLE practice_sure (
    session INTEGER NOT NULL CONSTRAINT practice_sure_session_exists REFERENCES practice_session (id),
    sure INTEGER NOT NULL,
    hits INTEGER NOT NULL,
    answers INTEGER NOT NULL CONSTRAINT practice_sure_counts CHECK (answers > 0 AND hits BETWEEN 0 AND answers),
    CONSTRAINT practice_sure_key PRIMARY KEY (session, sure)
) STRICT, WITHOUT ROWID;
INSERT INTO practice_sure (session, sure, hits, answers)
SELECT session, sure, sum(truth = given), count(*) FROM practice_item WHERE sure IS NOT NULL GROUP BY session, sure;

-- "1101": which of the questions of a case were answered rightly, in their order.
CREATE TABLE practice_hits (
    session INTEGER NOT NULL CONSTRAINT practice_hits_session_exists REFERENCES practice_session (id),
    answer INTEGER NOT NULL CONSTRAINT practice_hits_answer_exists REFERENCES practice_answer (id),
    hits TEXT NOT NULL,
    CONSTRAINT practice_hits_key PRIMARY KEY (session, answer)
) STRICT, WITHOUT ROWID;
INSERT INTO practice_hits (session, answer, hits)
SELECT session, answer, group_concat(truth = given, '') FROM (SELECT session, answer, truth, given FROM practice_item ORDER BY session, answer, item)
GROUP BY session, answer;

CREATE TRIGGER practice_item_counted AFTER INSERT ON practice_item
BEGIN
    INSERT INTO practice_count (session, kind, subject, truth, given, answers)
    VALUES (new.session, new.kind, new.subject, new.truth, new.given, 1)
    ON CONFLICT DO UPDATE SET answers = answers + 1;
    INSERT INTO practice_sure (session, sure, hits, answers)
    SELECT new.session, new.sure, new.truth = new.given, 1 WHERE new.sure IS NOT NULL
    ON CONFLICT DO UPDATE SET hits = hits + excluded.hits, answers = answers + 1;
    INSERT INTO practice_hits (session, answer, hits) VALUES (new.session, new.answer, new.truth = new.given)
    ON CONFLICT DO UPDATE SET hits = hits || excluded.hits;
END;

DROP INDEX practice_item_count;
DROP INDEX practice_item_sure;
