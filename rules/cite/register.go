package cite

// register lists the sources, by the package whose values rest on them.
var register = []Source{
	// Knowledge that has no document.
	{ID: "practice", Title: "common practice in the cutting trade", Trust: Practice},
	{ID: "invented", Title: "invented for the demo", Trust: Invented},
	{ID: "rating-plate", Title: "the system's own row in the range", Trust: Given},
	{ID: "customer", Title: "the customer's own answer", Trust: Given},

	// Cited by rules/unit.
	{ID: "nist-sp-811", Title: "NIST SP 811, Guide for the Use of the International System of Units", Edition: "2008", Trust: Published},
	{ID: "usc-15-206", Title: "15 USC 206, standard gauge for sheet and plate iron and steel", Trust: Published},
	{ID: "smacna-1995", Title: "SMACNA HVAC Duct Construction Standards", Edition: "1995", Trust: Published},
	{ID: "msg", Title: "manufacturers' standard gauge for sheet steel, 41.82 lb/ft² per inch", Trust: Memory},
	{ID: "astm-b258", Title: "ASTM B258, American wire gauge", Trust: Memory},

	// Cited by rules/size. Where a standard was read in a restatement only, the title
	// says so; what no one read is from memory.
	{ID: "physics", Title: "textbook physics: power, heat and gas laws", Trust: Published},
	{ID: "geometry", Title: "school geometry", Trust: Published},
	{ID: "nec-630-11", Title: "NFPA 70 (NEC) 630.11", Edition: "2008 text", Trust: Published},
	{ID: "nec-630-12", Title: "NFPA 70 (NEC) 630.12", Edition: "2008 text", Trust: Published},
	{ID: "nec-240-6", Title: "NFPA 70 (NEC) 240.6(A)", Trust: Published},
	{ID: "nec-210-19", Title: "NFPA 70 (NEC) 210.19 informational note", Trust: Published},
	{ID: "nec-310-16", Title: "NFPA 70 (NEC) Table 310.16, 60 °C and 75 °C", Edition: "2023 figures", Trust: Published},
	{ID: "nec-9-8", Title: "NFPA 70 (NEC) Chapter 9 Table 8", Trust: Published},
	{ID: "iec-60228", Title: "IEC 60228, as restated in a cable table", Trust: Published},
	{ID: "iec-60228-unread", Title: "IEC 60228", Trust: Memory},
	{ID: "iec-60038", Title: "IEC 60038 Table 1, as restated", Trust: Published},
	{ID: "iec-60287", Title: "IEC 60287 Table 1, as restated", Trust: Published},
	{ID: "iec-60974-1", Title: "IEC 60974-1", Trust: Memory},
	{ID: "aws-glossary", Title: "AWS online glossary, duty cycle", Trust: Published},
	{ID: "osha-254", Title: "29 CFR 1910.254", Trust: Published},
	{ID: "iso-2533", Title: "ISO 2533 standard atmosphere", Trust: Memory},
	{ID: "iso-8778", Title: "ISO 8778 reference atmosphere", Trust: Memory},
	{ID: "iso-8573-1", Title: "ISO 8573-1:2010, as restated", Trust: Published},
	{ID: "hose-darcy", Title: "Darcy–Weisbach equation with the Swamee–Jain friction factor", Trust: Memory},
	{ID: "pipe-texts", Title: "general compressed-air texts, 450·q^1.85 form", Trust: Published},
	{ID: "receiver-ornl", Title: "Oak Ridge National Laboratory, compressed-air formulas, dedicated storage", Trust: Published},
	{ID: "receiver-example", Title: "public engineer's spreadsheet on receiver volume", Trust: Published},
	{ID: "wmo-8", Title: "WMO-No. 8, Annex 4.B", Trust: Memory},
	{ID: "iapws-if97", Title: "IAPWS-IF97, region 4", Trust: Published},
	{ID: "aws-wh-1", Title: "AWS Welding Handbook vol. 1, heat flow", Trust: Memory},
	{ID: "aws-wh-2", Title: "AWS Welding Handbook vol. 2", Trust: Memory},
	{ID: "aws-pac", Title: "AWS Welding Handbook, plasma arc cutting conditions, as reprinted in a textbook", Trust: Published},
	{ID: "wells-1952", Title: "Wells, Heat flow in welding, Welding Journal 1952", Trust: Memory},
	{ID: "rosenthal", Title: "Rosenthal, moving line source of heat in a plate, 1941", Trust: Memory},
	{ID: "kou", Title: "Kou, Welding Metallurgy, Table 2.1", Trust: Memory},
	{ID: "property-tables", Title: "handbook property tables of metals", Trust: Memory},
	{ID: "carvill", Title: "Carvill, Mechanical Engineer's Data Handbook, p. 210", Trust: Published},
	{ID: "iso-9013", Title: "ISO 9013:2017, as restated in two public texts", Trust: Published},
	{ID: "iso-9013-unread", Title: "ISO 9013:2017", Trust: Memory},
	{ID: "en-1090-2", Title: "EN 1090-2:2018", Trust: Memory},

	// Cited by the cautions. A clause that was not read in a copy of the rule is cited
	// through the entry that says "from memory".
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

	// Cited by rules/demonstration beside the general entry for common practice.
	{ID: "practice-setting", Title: "common practice at the torch", Trust: Practice},
	{ID: "practice-showing", Title: "common practice in demonstrations", Trust: Practice},

	// Cited by rules/cost.
	{ID: "aws-oxyfuel", Title: "AWS Welding Handbook vol. 2, oxy-fuel cutting of clean mild steel by hand", Trust: Memory},
	{ID: "navy-steelworker", Title: "US Navy Steelworker manual, NAVEDTRA 14250", Trust: Published},
	{ID: "faa-8083-31", Title: "FAA-H-8083-31, sheet metal tools", Trust: Memory},
	{ID: "doe-air", Title: "US DOE, Improving Compressed Air System Performance", Trust: Memory},
	{ID: "nist-135", Title: "NIST Handbook 135, life-cycle costing", Trust: Memory},
	{ID: "gum", Title: "JCGM 100:2008, Guide to the expression of uncertainty in measurement", Trust: Memory},
}
