package report

import (
	"bytes"
	"cmp"
	"crypto/sha256"
	"encoding/hex"
	"fmt"
	"regexp"
	"slices"
	"strconv"
	"strings"
	"sync"

	"cutbrief/assess"
	"cutbrief/rules"
	"cutbrief/rules/cost"
	"cutbrief/rules/message"
	"cutbrief/rules/system"
	"cutbrief/rules/unit"
)

// CheckCode says what a page was made from: fingerprints in hexadecimal digits,
// and a code over all of them. It shows that page, visit and lists belong
// together; it does not prove that nobody changed the words on a page.
type CheckCode struct {
	Code    string // SHA-256 over the rest
	Visit   string // SHA-256 over the file as it is encoded
	Systems string
	Prices  string
	Rules   int
	Units   unit.Style
	Paper   string // "" where it is printed on none
}

// CheckCodeOf is the code of the page that Build makes of the same, for a sheet of
// paper.
func CheckCodeOf(v *assess.Visit, offered system.Range, o Options, paper string) (CheckCode, error) {
	data, err := v.Encode()
	if err != nil {
		return CheckCode{}, err
	}
	b := newBuilder(v, &offered, o)
	sum := sha256.Sum256(data)
	c := CheckCode{
		Visit: hex.EncodeToString(sum[:]), Systems: system.Fingerprint(offered), Prices: cost.PricesFingerprint(b.prices()),
		Rules: rules.Edition, Units: b.style, Paper: paper,
	}
	c.Code = c.over()
	return c, nil
}

// BuildFor is Build for a page on a sheet of paper, "" for one on none, with its
// check code where the options ask for it. It fails where the visit is too large to
// be saved.
func BuildFor(paper string, v *assess.Visit, offered system.Range, o Options) (Brief, error) {
	if o.Coded {
		code, err := CheckCodeOf(v, offered, o, paper)
		if err != nil {
			return Brief{}, err
		}
		o.check = &code
	}
	return Build(v, offered, o), nil
}

// over is the code over the rest.
func (c CheckCode) over() string {
	sum := sha256.Sum256(fmt.Appendf(nil, "cutbrief page 1 %s %s %s %d %s %q", c.Visit, c.Systems, c.Prices, c.Rules, c.Units, c.Paper))
	return hex.EncodeToString(sum[:])
}

// String is the whole of it on one line, as a page's metadata and its JSON hold it.
func (c CheckCode) String() string {
	return fmt.Sprintf("code=%s visit=%s systems=%s prices=%s rules=%d units=%s paper=%s", c.Code, c.Visit, c.Systems, c.Prices, c.Rules, c.Units, cmp.Or(c.Paper, "-"))
}

// digitsPrinted is how many digits of the code are printed, in groups of four: one
// in 2⁶⁴ fits another page by chance.
const digitsPrinted = 16

// printed is what stands on the page.
func (c CheckCode) printed() string {
	groups := slices.Collect(slices.Chunk([]byte(c.Code[:digitsPrinted]), 4))
	short := c
	short.Code, short.Visit = string(bytes.Join(groups, []byte("-"))), c.Visit[:12]
	return short.String()
}

// codeOnPage finds the code in a page, whole or as printed, wrapped or not.
var codeOnPage = sync.OnceValue(func() *regexp.Regexp {
	return regexp.MustCompile(`code=([0-9a-f-]{19,64}) visit=([0-9a-f]{12,64}) systems=([0-9a-f]{12}) prices=([0-9a-f]{12}) rules=(\d{1,9}) units=(mm|in) paper=([a-z0-9]{1,20}|-)`)
})

// CheckCodeOn reads the code of a page in any form it is written in; false if it has
// none.
func CheckCodeOn(page []byte) (CheckCode, bool) {
	found := codeOnPage().FindSubmatch(page)
	if found == nil {
		plain := strings.Join(strings.Fields(strings.ReplaceAll(string(page), `\`, "")), " ")
		if found = codeOnPage().FindSubmatch([]byte(plain)); found == nil {
			return CheckCode{}, false
		}
	}
	text := func(i int) string { return string(found[i]) }
	edition, _ := strconv.Atoi(text(5)) // it is digits
	return CheckCode{
		Code: strings.ReplaceAll(text(1), "-", ""), Visit: text(2), Systems: text(3), Prices: text(4), Rules: edition,
		Units: unit.Style(text(6)), Paper: strings.Trim(text(7), "-"),
	}, true
}

// Differ says what on a page is not as it would be today, in the order that
// matters; empty if it is all the same.
func (c CheckCode) Differ(today CheckCode) (list []message.Message) {
	add := func(differs bool, id message.ID, args ...any) {
		if differs {
			list = append(list, message.New(id, args...))
		}
	}
	add(!strings.HasPrefix(today.Visit, c.Visit), "the visit: it is another, or was changed since")
	add(c.Systems != today.Systems, "the list of systems")
	add(c.Prices != today.Prices, "the list of prices")
	add(c.Rules != today.Rules, "the rules: edition {1} on the page, {2} today", message.Count(c.Rules), message.Count(today.Rules))
	add(c.Units != today.Units, "the units: {1} on the page, {2} here", message.Name(c.Units), message.Name(today.Units))
	whole := c
	whole.Visit = today.Visit
	add(len(list) == 0 && !strings.HasPrefix(whole.over(), c.Code), "the code itself: the page says one thing and its code another")
	return list
}
