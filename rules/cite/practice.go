package cite

// practiceSources are cited by the demonstration room beside the general entry
// for common practice.
var practiceSources = []Source{
	{ID: "practice-setting", Title: "common practice at the torch", Trust: Practice},
	{ID: "practice-showing", Title: "common practice in demonstrations", Trust: Practice},
}
