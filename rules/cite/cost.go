package cite

// costSources are cited by the cost room.
var costSources = []Source{
	{ID: "aws-oxyfuel", Title: "AWS Welding Handbook vol. 2, oxy-fuel cutting of clean mild steel by hand", Trust: Memory},
	{ID: "navy-steelworker", Title: "US Navy Steelworker manual, NAVEDTRA 14250", Trust: Published},
	{ID: "faa-8083-31", Title: "FAA-H-8083-31, sheet metal tools", Trust: Memory},
	{ID: "doe-air", Title: "US DOE, Improving Compressed Air System Performance", Trust: Memory},
	{ID: "nist-135", Title: "NIST Handbook 135, life-cycle costing", Trust: Memory},
	{ID: "gum", Title: "JCGM 100:2008, Guide to the expression of uncertainty in measurement", Trust: Memory},
}
