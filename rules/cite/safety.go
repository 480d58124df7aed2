package cite

// safetySources are cited by the safety room. A clause that was not read in a
// copy of the rule is cited through the entry that says "from memory".
var safetySources = []Source{
	{ID: "osha-eyes", Title: "29 CFR 1910.133", Trust: Published},
	{ID: "osha-hot-work", Title: "29 CFR 1910.252", Trust: Published},
	{ID: "osha-hot-work-unread", Title: "29 CFR 1910.252", Trust: Memory},
	{ID: "osha-chromium", Title: "29 CFR 1910.1026", Trust: Published},
	{ID: "osha-coatings", Title: "29 CFR 1910.1000 Table Z-1, 1910.1025(c), 1910.1027(c)", Trust: Published},
	{ID: "osha-limits-unread", Title: "29 CFR 1910.1000 Table Z-1", Trust: Memory},
	{ID: "osha-confined", Title: "29 CFR 1910.146", Trust: Published},
	{ID: "eu-noise", Title: "Directive 2003/10/EC", Trust: Published},
	{ID: "hse-fume", Title: "HSE safety alert STSU1", Edition: "2019", Trust: Published},
	{ID: "army-solvents", Title: "US Army TM 55-1930-209-14&P-15", Trust: Published},
	{ID: "ansi-z49", Title: "ANSI Z49.1", Trust: Memory},
	{ID: "nfpa-51b", Title: "NFPA 51B", Edition: "2019", Trust: Memory},
	{ID: "chemistry-aluminium", Title: "general chemistry", Trust: Memory},
}
