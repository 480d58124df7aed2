package assess

import "strings"

func clean(f Form, s string) string { return cleanText(s, f == FormLong) }

func cleanText(s string, long bool) string { return strings.TrimSpace(strings.ToValidUTF8(s, "�")) }
