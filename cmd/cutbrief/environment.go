package main

// variables are what the program reads from the environment, as the manual
// tells it. A test looks for others.
var variables = []struct{ name, says string }{
	{"CUTBRIEF_DIR", "folder that visits are kept in, where --dir names none"},
	{"CUTBRIEF_SYSTEMS", "file with the systems you can offer, where --systems names none"},
	{"CUTBRIEF_PRICES", "file with the prices to reckon with, where --prices names none"},
	{"CUTBRIEF_WORDS", "words of the interview and the page, where --words names none"},
	{"NO_COLOR", "if set, nothing is coloured"},
	{"TERM", "the kind of terminal; with \"dumb\" nothing is drawn, and questions come line by line"},
	{"HOME, XDG_DATA_HOME, XDG_CONFIG_HOME, XDG_CACHE_HOME", "where files are kept on Linux; on macOS HOME says it, on Windows AppData and LocalAppData"},
}

// statuses are what the program ends with.
var statuses = []struct {
	status int
	says   string
}{
	{done, "it is done"},
	{failed, "something failed; two lines on standard error say what, and what to do"},
	{wrongUsage, "the command line was not understood"},
	{interrupted, "it was interrupted"},
}
