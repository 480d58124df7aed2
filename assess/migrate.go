package assess

// migrate brings the fields of an older version to the present one. Version 2
// gave a meaning to the field "showings". In a file of version 1 a field of that
// name is one nobody here knows: it is kept under a name of its own.
func migrate(t *taker, version int) {
	if version >= 2 {
		return
	}
	for i := range t.fields {
		if t.fields[i].name == "showings" {
			t.fields[i].name = "showings-in-version-1"
		}
	}
}
