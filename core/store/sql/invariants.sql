-- What must hold in every store beyond what the tables' own constraints say. Each query gives the rows that break it:
-- the rule's name, which row, and what to do ("tell-office", "rebuild", "restore-backup").

SELECT 'visit-content-id' AS rule, hex(uid) AS what, 'restore-backup' AS advice
FROM visit WHERE replace(content ->> '$.id', '-', '') <> lower(hex(uid));

SELECT 'tree-content-id', hex(uid), 'restore-backup'
FROM tree WHERE replace(content ->> '$.id', '-', '') <> lower(hex(uid));

SELECT 'tree-label', hex(uid), 'tell-office'
FROM tree WHERE label <> coalesce(content ->> '$.label', '');

SELECT 'tree-merged', hex(uid), 'tell-office'
FROM tree WHERE (label_key >= char(1114111)) <> (content ->> '$.mergedInto' IS NOT NULL);

SELECT 'tree-place', hex(uid), 'tell-office'
FROM tree WHERE latitude IS NOT content ->> '$.position.latitude' OR longitude IS NOT content ->> '$.position.longitude';

SELECT 'tree-cell', hex(uid), 'restore-backup'
FROM tree WHERE cell IS NOT CAST((latitude + 90) * 100 AS INTEGER) * 65536 + CAST((longitude + 180) * 100 AS INTEGER);

SELECT 'find-cell', hex(visit.uid), 'restore-backup'
FROM find JOIN visit ON visit.id = find.visit
WHERE find.cell <> CAST((latitude + 90) * 100 AS INTEGER) * 65536 + CAST((longitude + 180) * 100 AS INTEGER);

SELECT 'tree-site', hex(tree.uid), 'tell-office'
FROM tree LEFT JOIN site ON site.id = tree.site
WHERE coalesce(lower(hex(site.uid)), '') <> replace(coalesce(tree.content ->> '$.site', ''), '-', '');

SELECT 'tree-note', hex(uid), 'tell-office'
FROM tree WHERE note IS NOT content ->> '$.note';

SELECT 'site-note', hex(uid), 'tell-office'
FROM site WHERE note IS NOT content ->> '$.note';

SELECT 'visit-note', hex(uid), 'tell-office'
FROM visit WHERE note IS NOT content ->> '$.note';

SELECT 'site-name', hex(uid), 'tell-office'
FROM site WHERE name <> coalesce(content ->> '$.name', '');

SELECT 'person-code', hex(uid), 'tell-office'
FROM person WHERE code <> coalesce(content ->> '$.code', '') AND code NOT LIKE coalesce(content ->> '$.code', '') || '~____________';

SELECT 'sample-number', hex(uid), 'tell-office'
FROM sample WHERE number_key <> upper(replace(replace(content ->> '$.number', '-', ''), ' ', ''))
   AND number_key NOT LIKE upper(replace(replace(content ->> '$.number', '-', ''), ' ', '')) || '~____________';

SELECT 'photo-picture', hex(uid), 'tell-office'
FROM photo WHERE sha256 <> content ->> '$.sha256';

SELECT 'key-note', hex(uid), 'tell-office'
FROM key_note WHERE key IS NOT content ->> '$.key' OR lower(hex(person)) IS NOT replace(content ->> '$.person', '-', '');

SELECT 'bundle', hex(uid), 'tell-office'
FROM bundle WHERE key IS NOT content ->> '$.key' OR number IS NOT content ->> '$.number'
   OR (way = 'merged') IS NOT coalesce(content ->> '$.merged', 0);

SELECT 'audit-state', hex(uid), 'tell-office'
FROM audit WHERE state <> coalesce((SELECT iif(event = 'undone', 'open', event) FROM audit_step
                                    WHERE audit_step.audit = audit.id AND event IN ('passed', 'failed', 'given-up', 'undone')
                                    ORDER BY audit_step.id DESC LIMIT 1), 'open');

SELECT 'audit-members', hex(uid), 'tell-office'
FROM audit WHERE json_array_length(content -> '$.records')
    <> (SELECT count(*) FROM audit_member WHERE audit_member.audit = audit.id);

SELECT 'visit-observer', hex(visit.uid), 'tell-office'
FROM visit LEFT JOIN person ON person.id = visit.observer
WHERE coalesce(lower(hex(person.uid)), '') <> replace(coalesce(visit.content ->> '$.observer', ''), '-', '');

SELECT 'visit-day', hex(uid), 'tell-office'
FROM visit WHERE date(day * 86400, 'unixepoch') <> content ->> '$.date';

SELECT 'visit-queued', hex(uid), 'tell-office'
FROM visit WHERE queued <> (struck = 0 AND (state = 'submitted' OR correction_waits = 1));

SELECT 'visit-head-entity', hex(visit.uid), 'tell-office'
FROM visit JOIN revision ON revision.uid = visit.head WHERE revision.entity <> visit.uid;

SELECT 'visit-decided-entity', hex(visit.uid), 'tell-office'
FROM visit JOIN revision ON revision.uid = visit.decided WHERE revision.entity <> visit.uid;

SELECT 'visit-correction', hex(uid), 'tell-office'
FROM visit WHERE correction_waits = 1 AND (decided IS NULL OR (decided = head AND uid NOT IN (SELECT entity FROM joined)));

SELECT 'visit-accepted-undecided', hex(visit.uid), 'tell-office'
FROM visit WHERE state = 'accepted' AND NOT EXISTS (SELECT 1 FROM decision WHERE decision.visit = visit.id);

SELECT 'decision-revision', hex(decision.uid), 'tell-office'
FROM decision JOIN visit ON visit.id = decision.visit JOIN revision ON revision.uid = decision.revision
WHERE revision.entity <> visit.uid;

SELECT 'find-accepted', hex(visit.uid), 'rebuild'
FROM find JOIN visit ON visit.id = find.visit WHERE visit.state <> 'accepted' OR visit.struck = 1;

SELECT 'queue-count', code, 'rebuild'
FROM (SELECT code, waiting FROM queue_count WHERE waiting > 0
      EXCEPT SELECT queue_code, count(*) FROM visit WHERE queued = 1 GROUP BY queue_code);

SELECT 'queue-count', code, 'rebuild'
FROM (SELECT queue_code AS code, count(*) FROM visit WHERE queued = 1 GROUP BY queue_code EXCEPT SELECT code, waiting FROM queue_count);

SELECT 'find-square', square, 'rebuild'
FROM (SELECT cell / 65536 / 5 * 8192 + cell % 65536 / 5 AS square, count(*) FROM find GROUP BY 1 EXCEPT SELECT square, finds FROM find_square);

SELECT 'find-square', square, 'rebuild'
FROM (SELECT square, finds FROM find_square EXCEPT SELECT cell / 65536 / 5 * 8192 + cell % 65536 / 5, count(*) FROM find GROUP BY 1);

SELECT 'tree-visits', hex(tree.uid), 'rebuild'
FROM tree WHERE visits <> (SELECT count(*) FROM visit WHERE visit.tree = tree.id AND struck = 0);

SELECT 'tree-last-day', hex(tree.uid), 'rebuild'
FROM tree WHERE last_day IS NOT (SELECT max(day) FROM visit WHERE visit.tree = tree.id AND struck = 0);

SELECT 'tree-positive', hex(tree.uid), 'rebuild'
FROM tree
WHERE positive_accepted <> (SELECT count(*) FROM visit
                            WHERE visit.tree = tree.id AND struck = 0 AND positive = 1 AND state = 'accepted')
   OR positive_waiting <> (SELECT count(*) FROM visit
                           WHERE visit.tree = tree.id AND struck = 0 AND positive = 1
                             AND state IN ('draft', 'submitted', 'returned'));

SELECT 'custody-numbers', hex(sample.uid), 'tell-office'
FROM sample JOIN custody ON custody.sample = sample.id
GROUP BY sample.id HAVING max(custody.number) <> count(*);

SELECT 'incarnation-line', hex(incarnation.uid), 'tell-office'
FROM incarnation WHERE id NOT IN (SELECT chain FROM piece)
  AND NOT EXISTS (SELECT 1 FROM journal WHERE chain = incarnation.id AND number = 1 AND kind = 'began');

SELECT 'piece-line', hex(incarnation.uid), 'tell-office'
FROM piece JOIN incarnation ON incarnation.id = piece.chain
WHERE NOT EXISTS (SELECT 1 FROM journal WHERE chain = piece.chain AND number = piece.first);

SELECT 'joined-noun', hex(entity), 'rebuild'
FROM joined WHERE NOT EXISTS (SELECT 1 FROM revision WHERE revision.entity = joined.entity AND revision.noun = joined.noun);

SELECT 'practice-session', hex(uid), 'tell-office'
FROM practice_session WHERE cohort <> coalesce(content ->> '$.cohort', '') OR series <> coalesce(content ->> '$.plan.series', 0);

SELECT 'practice-answer', hex(s.uid), 'tell-office'
FROM practice_answer AS a JOIN practice_session AS s ON s.id = a.session
WHERE replace(a.content ->> '$.session', '-', '') <> lower(hex(s.uid)) OR a.number <> a.content ->> '$.number' OR a.case_id <> a.content ->> '$.caseId';

SELECT 'practice-item', hex(s.uid), 'tell-office'
FROM practice_answer AS a JOIN practice_session AS s ON s.id = a.session
WHERE json_array_length(a.content, '$.items') <> (SELECT count(*) FROM practice_item AS i WHERE i.session = a.session AND i.answer = a.id)
   OR EXISTS (SELECT 1 FROM practice_item AS i WHERE i.session = a.session AND i.answer = a.id
              AND (i.kind IS NOT a.content ->> ('$.items[' || i.item || '].kind') OR i.truth IS NOT a.content ->> ('$.items[' || i.item || '].truth')
                   OR i.given IS NOT a.content ->> ('$.items[' || i.item || '].given') OR i.sure IS NOT a.content ->> ('$.items[' || i.item || '].sure')
                   OR i.subject <> coalesce(a.content ->> ('$.items[' || i.item || '].subject'), '')));

SELECT 'practice-count', hex(s.uid), 'rebuild'
FROM practice_session AS s
WHERE (SELECT coalesce(sum(answers), 0) FROM practice_count WHERE session = s.id) <> (SELECT count(*) FROM practice_item WHERE session = s.id)
   OR (SELECT coalesce(sum(answers), 0) FROM practice_sure WHERE session = s.id) <> (SELECT count(sure) FROM practice_item WHERE session = s.id)
   OR (SELECT coalesce(sum(length(hits)), 0) FROM practice_hits WHERE session = s.id) <> (SELECT count(*) FROM practice_item WHERE session = s.id)
   OR (SELECT coalesce(sum(length(replace(hits, '0', ''))), 0) FROM practice_hits WHERE session = s.id)
      <> (SELECT coalesce(sum(truth = given), 0) FROM practice_item WHERE session = s.id)
   OR EXISTS (SELECT kind, subject, truth, given, count(*) FROM practice_item WHERE session = s.id GROUP BY kind, subject, truth, given
              EXCEPT SELECT kind, subject, truth, given, answers FROM practice_count WHERE session = s.id);

SELECT 'practice-person', hex(s.uid), 'tell-office'
FROM practice_session AS s LEFT JOIN person AS p ON p.id = s.person LEFT JOIN personal AS r ON r.commitment = s.commitment
WHERE coalesce(lower(hex(p.uid)), '') <> coalesce(replace(r.payload ->> '$.person', '-', ''), '');

SELECT 'skill-person', hex(s.uid), 'tell-office'
FROM skill AS s LEFT JOIN person AS p ON p.id = s.person LEFT JOIN personal AS r ON r.commitment = s.commitment
WHERE coalesce(lower(hex(p.uid)), '') <> coalesce(replace(r.payload ->> '$.person', '-', ''), '');

SELECT 'skill-withdraws', hex(uid), 'tell-office'
FROM skill WHERE coalesce(lower(hex(withdraws)), '') <> replace(coalesce(content ->> '$.withdraws', ''), '-', '');
