package cite

// unitSources are cited by the unit room.
var unitSources = []Source{
	{ID: "nist-sp-811", Title: "NIST SP 811, Guide for the Use of the International System of Units", Edition: "2008", Trust: Published},
	{ID: "usc-15-206", Title: "15 USC 206, standard gauge for sheet and plate iron and steel", Trust: Published},
	{ID: "smacna-1995", Title: "SMACNA HVAC Duct Construction Standards", Edition: "1995", Trust: Published},
	{ID: "msg", Title: "manufacturers' standard gauge for sheet steel, 41.82 lb/ft² per inch", Trust: Memory},
	{ID: "astm-b258", Title: "ASTM B258, American wire gauge", Trust: Memory},
}
