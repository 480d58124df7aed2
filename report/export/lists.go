package export

import (
	"fmt"
	"slices"
	"strconv"
	"strings"
	"text/tabwriter"

	"cutbrief/assess"
	"cutbrief/assess/casebook"
	"cutbrief/assess/sanitize"
	"cutbrief/rules"
	"cutbrief/rules/cost"
	"cutbrief/rules/message"
	"cutbrief/rules/system"
	"cutbrief/rules/unit"
)

// grid lays out cells in columns below their headings.
func grid(words *message.Catalog, heads []message.ID, rows [][]string) string {
	var b strings.Builder
	t := tabwriter.NewWriter(&b, 0, 0, 2, ' ', 0)
	var printed []string
	for _, h := range heads {
		printed = append(printed, words.Print(h.Message()))
	}
	fmt.Fprintln(t, strings.Join(printed, "\t"))
	for _, r := range rows {
		for i := range r {
			r[i] = sanitize.Line(r[i])
		}
		fmt.Fprintln(t, strings.Join(r, "\t"))
	}
	t.Flush() // into memory; it cannot fail
	return b.String()
}

// Systems is a range as a table, one system a line.
func Systems(offered system.Range, words *message.Catalog) string {
	head := message.New("{1}: {2}", message.Name(sanitize.Line(offered.Name)), message.Counted(len(offered.Systems), "{1} system", "{1} systems"))
	if offered.Invented {
		head = message.New("{1}, all invented for the demo", head)
	}
	var rows [][]string
	for i := range offered.Systems {
		rows = append(rows, systemRow(&offered.Systems[i], offered.Currency, words))
	}
	return words.Print(head) + "\n\n" + grid(words, []message.ID{"ID", "NAME", "RATED", "CLEAN TO", "SEVERS", "OUTPUT", "PHASES", "WEIGHT", "PRICE"}, rows) +
		"\n" + words.Print(message.ID("Thicknesses are mild steel, cut by hand.").Message()) + "\n"
}

func systemRow(s *system.System, currency string, words *message.Catalog) []string {
	show := func(value float64, kind unit.Kind, r unit.Round) string {
		return words.Print(message.Number(unit.Show(unit.Quantity{Value: value, Kind: kind}, unit.Metric, r)))
	}
	var phases []message.Message
	for _, p := range []int{1, 3} {
		if slices.ContainsFunc(s.Supplies, func(one system.Supply) bool { return one.Phases == p }) {
			phases = append(phases, message.Text(fmt.Sprint(p)))
		}
	}
	price := words.Print(message.ID("not known").Message())
	if money, known := s.Price.Get(); known {
		price = fmt.Sprintf("%.0f %s", float64(money), currency)
	}
	return []string{
		s.ID, s.Name, show(float64(s.Rated), unit.Thickness, unit.Down), show(float64(s.CleanMax), unit.Thickness, unit.Down), show(float64(s.Severance), unit.Thickness, unit.Down),
		fmt.Sprintf("%g–%g A", float64(s.OutputMin), float64(s.OutputMax)), words.Print(message.Or(phases...)), show(float64(s.Weight), unit.Weight, unit.Up), price,
	}
}

// Prices is a price list as a table, one price a line.
func Prices(list cost.PriceList, words *message.Catalog) string {
	name := message.Text(sanitize.Line(list.Name))
	if list.Name == cost.DemoPricesName {
		name = message.ID(cost.DemoPricesName).Message()
	}
	head := message.New("{1}: {2}", name, message.Counted(len(list.IDs()), "{1} item", "{1} items"))
	if list.Invented {
		head = message.New("{1}, with prices invented for the demo", head)
	}
	said := func(text string, none message.ID) message.Message {
		if text == "" {
			return none.Message()
		}
		return message.Text(sanitize.Line(text))
	}
	about := message.Join(", ", said(list.Currency, "no currency said"), said(list.Date, "no date said"), said(list.Place, "no place said"))
	var rows [][]string
	number := func(v float64) string {
		return words.Print(message.Number(strconv.FormatFloat(v, 'g', 5, 64)))
	}
	for _, id := range list.IDs() {
		p, _ := list.Get(id)
		item, _ := cost.FindItem(id)
		rows = append(rows, []string{string(id), number(p.Low), number(p.Likely), number(p.High), words.Print(item.UnitIn(list.Currency)), words.Print(message.ID(p.Basis).Message())})
	}
	return words.Print(head) + "\n" + words.Print(about) + "\n\n" + grid(words, []message.ID{"ITEM", "LOW", "LIKELY", "HIGH", "UNIT", "BASIS"}, rows)
}

// Samples lists the invented visits, one a line.
func Samples(words *message.Catalog) string {
	said := func(v *assess.Visit, f rules.Fact) string {
		a, _ := v.Answer(rules.Asked{Fact: f})
		return a.Said
	}
	var rows [][]string
	for _, name := range casebook.DemoVisits() {
		v, _ := casebook.DemoVisit(name) // it is one of the names
		rows = append(rows, []string{name, said(v, assess.FactCompany), said(v, assess.FactPlace)})
	}
	return grid(words, []message.ID{"NAME", "COMPANY", "PLACE"}, rows) + "\n" + words.Print(message.ID("Every company, person and figure in them is invented.").Message()) + "\n"
}
