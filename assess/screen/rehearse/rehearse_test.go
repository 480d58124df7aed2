package rehearse

import (
	"strings"
	"testing"
	"time"

	"cutbrief/assess"
	"cutbrief/assess/casebook"
	"cutbrief/assess/screen/screentest"
	"cutbrief/report"
	"cutbrief/rules/message/catalog"
	"cutbrief/rules/system"

	tea "github.com/charmbracelet/bubbletea"
	"github.com/charmbracelet/x/ansi"
	"pgregory.net/rapid"
)

// 18 s are predicted: 24 s are too slow, 18.4 s on the mark, 12 s too fast
// (limits 20.7 s and 15.65 s, see showing.Compare).
func TestTimeIsComparedAtOnce(t *testing.T) {
	d := drive(t, bench()).keys("<enter>").sees("STRAIGHT CUT, TIMED", "6 mm mild steel", "300 mm in 18 s", "Space start the time")
	d.keys("<space>").passes(7*time.Second).sees("Aim at 18.0 s.", "Space stop the time")
	d.passes(17*time.Second).keys("<space>").sees("TOO SLOW", "18.0 s predicted", "Lead a little faster")
	d.keys("<space>").passes(18400*time.Millisecond).keys("<space>").sees("ON THE MARK", "Keep this pace")
	d.keys("<space>").passes(12*time.Second).keys("<space>").sees("TOO FAST", "Lead a little slower")
	out := d.m.outcome()
	if len(out.Cuts) != 1 || out.Cuts[0].Took.Or(0) != 12 || out.Cuts[0].Length.Or(0) != 300 || out.Cuts[0].Predicted.Or(0) != 18 || out.Keep {
		t.Errorf("%+v", out)
	}
}

// The figure stands large: its lines hold the digits of 24.0.
func TestDigitsAreLarge(t *testing.T) {
	d := drive(t, bench()).keys("<enter>", "<space>").passes(24 * time.Second)
	for _, l := range large("24.0 s") {
		if !strings.Contains(d.View(), l) {
			t.Errorf("%q is not on the screen:\n%s", l, d.View())
		}
	}
	for r := range digits {
		for _, l := range large(string(r))[1:] {
			if ansi.StringWidth(l) > 5 {
				t.Errorf("%q is wider than five cells", r)
			}
		}
	}
}

func TestGoingThrough(t *testing.T) {
	d := drive(t, bench()).sees("TEST 60", "Takes about 20 min", "1 Straight cut, timed", "Brook Farm")
	d.keys("<enter>").sees("Step 1 of 2").passes(65 * time.Second).sees("1:05")
	d.keys("1").sees("Noted: good")
	d.keys("<enter>").sees("Step 2 of 2", "Change the plate or the setting first.")
	d.keys("<space>") // nothing to time here
	d.sees("THE CUSTOMER'S OWN PIECE")
	d.keys("3").sees("Why? In a few words:").keys("their", "<space>", "painx", "<backspace>", "t", "<enter>").sees("Noted: poor, their paint")
	d.keys("<enter>").sees("THAT IS THE DEMONSTRATION", "1 Straight cut, timed: good", "2 The customer's own piece: poor")
	d.keys("<esc>").sees("Step 2 of 2").keys("<esc>").sees("Step 1 of 2").keys("<esc>").sees("TEST 60")
	d.keys("<enter>", "<enter>", "<enter>", "k")
	out := d.m.outcome()
	if !d.Quit || !out.Keep || len(out.Cuts) != 2 || out.Cuts[1].Why != "their paint" || out.Cuts[1].Result != assess.Poor {
		t.Errorf("quit %v, %+v", d.Quit, out)
	}
}

// Keys hit together count one by one; nothing typed is lost by leaving.
func TestKeysTogetherAndLeaving(t *testing.T) {
	d := drive(t, bench()).keys("<enter>", "1?").sees("It can fail: a worn tip.", "So: fit a new one.", "Bring: watch.")
	d.keys("?", "2", "slow hand", "<ctrl+c>")
	out := d.m.outcome()
	if !d.Quit || out.Keep || len(out.Cuts) != 1 || out.Cuts[0].Result != assess.Fair || out.Cuts[0].Why != "slow hand" {
		t.Errorf("%+v", out)
	}
	d = drive(t, bench()).keys("<enter>", "q").sees("Nothing was measured or noted.").keys("q")
	if !d.Quit || len(d.m.outcome().Cuts) != 0 {
		t.Error("does not leave")
	}
}

func TestChecklistsAreTicked(t *testing.T) {
	d := drive(t, bench()).keys("c").sees("AT THE SITE, BEFORE THE FIRST ARC", "0 of 3 ticked", "› [ ] Bench steady.", "[29 CFR 1910.252(a)(2)(iii)(B)]")
	d.keys("<space>").sees("1 of 3 ticked", "[x] Bench steady.", "› [ ] Fire watch.")
	d.keys("<up>", "<space>").sees("0 of 3 ticked")
	d.keys("<tab>").sees("BEFORE LEAVING", "› [ ] Torch tried.").keys("<space>", "<esc>").sees("TEST 60")
	d.keys("<enter>", "c", "<tab>").sees("0 of 3 ticked").keys("<tab>").sees("1 of 2 ticked")
}

// An old tick, of a timer that was stopped, changes nothing and asks for no
// further one.
func TestOldTicksArePassedOver(t *testing.T) {
	d := drive(t, bench()).keys("<enter>")
	asked := 0
	d.m.tick = func(time.Duration) tea.Cmd { asked++; return nil }
	d.Send(tickMsg{d.m.pulse - 1})
	if asked != 0 {
		t.Error("an old tick goes on beating")
	}
	d.Send(tickMsg{d.m.pulse})
	if asked != 1 {
		t.Error("the clock stopped")
	}
}

// A clock that is set back gives no time that is none.
func TestClockSetBack(t *testing.T) {
	d := drive(t, bench()).keys("<enter>", "<space>").passes(-time.Hour).keys("<space>")
	if len(d.m.outcome().Cuts) != 0 || d.m.state != timing {
		t.Errorf("%+v", d.m.outcome())
	}
	d.View()
}

// Whatever is hit, at any size, the view is as high as the window and no wider,
// and nothing of the outcome breaks the record's rules.
func TestAnyKeysAnySize(t *testing.T) {
	all := []string{"<enter>", "<esc>", "<space>", "<tab>", "<up>", "<down>", "<backspace>", "1", "2", "3", "?", "c", "q", "k", "x", "日本", "wait", "small", "large"}
	rapid.Check(t, func(rt *rapid.T) {
		d := drive(t, bench())
		for _, k := range rapid.SliceOfN(rapid.SampledFrom(all), 0, 40).Draw(rt, "keys") {
			switch k {
			case "wait":
				d.passes(5 * time.Second)
			case "small":
				d.Resize(60, 20)
			case "large":
				d.Resize(200, 60)
			default:
				d.keys(k)
			}
			screentest.Inside(rt, d.View(), d.m.window.Size.Width, d.m.window.Size.Height)
		}
		for _, c := range d.m.outcome().Cuts {
			if took, ok := c.Took.Get(); ok && !(took > 0) || c.Cut == "" {
				rt.Errorf("%+v", c)
			}
		}
	})
}

// On the smallest screen that is promised, what has to be read is there.
func TestSmallScreenShowsWhatMatters(t *testing.T) {
	d := drive(t, bench())
	d.Resize(60, 20)
	d.keys("<enter>").sees("STRAIGHT CUT, TIMED", "6 mm mild steel", "60 A, stand-off 3–6 mm", "300 mm in 18 s", "Look for: the time", "Space start the time", "q leave")
	d.keys("<space>").passes(24*time.Second).keys("<space>").sees("TOO SLOW", "Lead a little faster", "1 good")
	if !strings.Contains(d.View(), large("24.0 s")[2]) {
		t.Errorf("the figure is cut off:\n%s", d.View())
	}
}

// With German words every state is German, figures too.
func TestGermanRehearsal(t *testing.T) {
	d := drive(t, bench())
	d.m.Words, d.m.window.Words = catalog.For("de"), catalog.For("de")
	d.sees("Zuerst die Prüflisten: Taste c.", "Enter beginnen", "q verlassen").keys("c").sees("VOR ORT, VOR DEM ERSTEN LICHTBOGEN", "0 von 3 abgehakt", "Space abhaken")
	d.keys("<esc>", "<enter>").sees("Schritt 1 von 2", "Darauf achten: the time", "1 gut, 2 mittel, 3 schlecht").keys("<space>").passes(24 * time.Second).keys("<space>").sees("ZU LANGSAM: 18,0 s vorhergesagt")
	d.keys("3").sees("Warum? In wenigen Worten:").keys("<esc>").sees("Schritt 1 von 2: schlecht", "Notiert: schlecht")
	d.keys("?").sees("Das kann schiefgehen:", "Dagegen:", "Mitbringen:").keys("<esc>", "q").sees("BISHER", "schlecht, 24,0 s, zu langsam", "k behalten und den Rest notieren")
}

// Every step of every demo visit has its settings and what to look for on the
// smallest screen, and the figure once it is timed.
func TestDemoVisitsFitTheSmallScreen(t *testing.T) {
	for _, name := range casebook.DemoVisits() {
		v, _ := casebook.DemoVisit(name)
		b := report.AtBench(v, system.Demo(), report.Options{})
		if len(b.Steps) == 0 {
			continue
		}
		d := drive(t, b)
		d.Resize(60, 20)
		d.keys("<enter>")
		for i, s := range b.Steps {
			d.sees(s.Piece, "Look for: "+s.See).sees(s.Torch...)
			if d.m.isTimed() {
				d.keys("<space>").passes(time.Minute).keys("<space>").sees("TOO SLOW", "heavy dross hangs below.")
			}
			if d.keys("1"); i < len(b.Steps)-1 {
				d.sees(": good").keys("<enter>")
			}
		}
	}
}
