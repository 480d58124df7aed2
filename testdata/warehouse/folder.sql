-- Visits by month, from the files themselves.
WITH visits AS (
    SELECT from_json(visit, '{"answers": [{"question": "VARCHAR", "said": "VARCHAR"}]}').answers AS answers
    FROM (SELECT TRY_CAST(content AS JSON) AS visit FROM read_text('visits/**/*.json'))
    WHERE (visit->>'$.format') = 'cutbrief-visit' AND CAST(visit->>'$.version' AS INTEGER) <= 2
)
SELECT coalesce(list_filter(answers, lambda a: a.question = 'date')[1].said[1:7], '') AS "of",
       count(*) AS visits
FROM visits
GROUP BY ALL
ORDER BY "of";
