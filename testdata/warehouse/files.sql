-- All files below the folder, and those that are no visit. A file whose bytes are
-- no text at all ends the query: read_blob in place of read_text finds it.
SELECT count(*) AS files,
       count(*) FILTER (coalesce(
           (visit->>'$.format') <> 'cutbrief-visit' OR CAST(visit->>'$.version' AS INTEGER) > 2, true)) AS unread
FROM (SELECT TRY_CAST(content AS JSON) AS visit FROM read_text('visits/**/*.json'));
