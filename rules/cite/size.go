package cite

// sizeSources are cited by the size room. Where a standard was read in a
// restatement only, the title says so; what no one read is from memory.
var sizeSources = []Source{
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
}
