package unit

import "strings"

// leadingUnitLast moves a sign or word that is said before the number behind
// it: #14, gauge 14, AWG 10, € 2500, EUR 2500.
func leadingUnitLast(s string, k Kind) string {
	start := strings.IndexAny(s, "0123456789.,-")
	if start <= 0 {
		return s
	}
	name := strings.TrimSpace(s[:start])
	number := strings.TrimSpace(s[start:])
	if strings.Trim(number, "0123456789., /-") != "" {
		return s
	}
	_, money := currency(name)
	switch {
	case k == Thickness && isGauge(name), k == Section && isWire(name), k == Price && money:
		return number + " " + name
	}
	return s
}

func isGauge(name string) bool {
	switch fold(name) {
	case "#", "ga", "gauge", "gage":
		return true
	}
	return false
}

func isWire(name string) bool {
	name = fold(name)
	return name == "#" || name == "awg"
}

// currency reads a currency as it will be printed: a sign, or a code of three
// capitals; the commonest codes may be typed small. "" is no currency.
func currency(name string) (string, bool) {
	switch name {
	case "", "$", "€", "£":
		return name, true
	case "eur", "usd", "gbp", "cad":
		return strings.ToUpper(name), true
	}
	return name, len(name) == 3 && strings.Trim(name, "ABCDEFGHIJKLMNOPQRSTUVWXYZ") == ""
}
