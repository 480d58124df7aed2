package assess

import (
	"strings"
	"testing"
	"time"

	"pgregory.net/rapid"

	"cutbrief/rules"
)

// lap answers a question and notes the time, some seconds after noon.
func lap(w *Stopwatch, v *Visit, at time.Duration) {
	v.Set(Answer{Question: FactRep, Said: "A", State: Told})
	w.Lap(v, noon.Add(at))
}

// By hand: 90 s to the first answer, 30 s to the second, then a pause of an hour,
// which does not count, and 60 s more: 180 s. Ten minutes count, a second more do
// not: 780 s in a second sitting that adds 600 s.
func TestTimeSpent(t *testing.T) {
	v := New("x", noon)
	w := NewStopwatch(v, noon)
	for _, at := range []time.Duration{90, 120, 120 + 3600, 3780} {
		lap(w, v, at*time.Second)
	}
	if got := v.InterviewTime; got.Sessions != 1 || !got.Seconds.IsKnown() || got.Seconds.Or(-1) != 180 {
		t.Errorf("one sitting: %+v", got)
	}
	w = NewStopwatch(v, noon)
	lap(w, v, Pause)
	lap(w, v, 2*Pause+time.Second)
	if got := v.InterviewTime; got.Sessions != 2 || got.Seconds.Or(-1) != 780 {
		t.Errorf("two sittings: %+v", got)
	}
}

// A clock that goes back makes the time not known, for good.
func TestAClockPutBack(t *testing.T) {
	v := New("x", noon)
	w := NewStopwatch(v, noon)
	lap(w, v, time.Minute)
	lap(w, v, -time.Hour)
	lap(w, v, time.Minute)
	if v.InterviewTime.Seconds.IsKnown() || v.InterviewTime.Sessions != 1 {
		t.Errorf("got %+v", v.InterviewTime)
	}
	lap(NewStopwatch(v, noon), v, time.Minute)
	if v.InterviewTime.Seconds.IsKnown() || v.InterviewTime.Sessions != 2 {
		t.Errorf("a later sitting: %+v", v.InterviewTime)
	}
}

// A visit begun without a watch gets no time later.
func TestAVisitBegunWithoutTime(t *testing.T) {
	v := New("x", noon)
	v.Set(Answer{Question: rules.FactMetals, Chosen: []string{"stainless"}, State: Told})
	if lap(NewStopwatch(v, noon), v, time.Minute); v.InterviewTime != nil {
		t.Errorf("got %+v", v.InterviewTime)
	}
}

// Whatever the clock says, the time is never below zero, never above that from
// the first look to the last, and saves and loads the same.
func TestAnyClock(t *testing.T) {
	schema := compiled(t)
	rapid.Check(t, func(rt *rapid.T) {
		v, at := New("x", noon), noon
		w := NewStopwatch(v, at)
		for _, step := range rapid.SliceOfN(rapid.Int64Range(-90000, 90000), 1, 8).Draw(rt, "steps") {
			at = at.Add(time.Duration(step) * time.Second)
			w.Lap(v, at)
		}
		if s, known := v.InterviewTime.Seconds.Get(); known && (s < 0 || float64(s) > at.Sub(noon).Seconds()) {
			rt.Fatalf("%v s", s)
		}
		data, err := v.Encode()
		if err != nil {
			rt.Fatal(err)
		}
		again, _, err := Decode(data)
		if err != nil || again.InterviewTime.Sessions != 1 || again.InterviewTime.Seconds != v.InterviewTime.Seconds {
			rt.Fatalf("%v: %+v", err, again)
		}
		if err := validate(t, schema, string(data)); err != nil {
			rt.Fatal(err)
		}
	})
}

func TestSpentKeepsWhatItDoesNotKnow(t *testing.T) {
	in := `{"format":"cutbrief-visit","version":2,"spent":{"sittings":2,"seconds":61.5,"typed":900},"answers":[]}`
	v, unknown, err := Decode([]byte(in))
	if err != nil || strings.Join(unknown, "|") != `spent: field "typed"` || v.InterviewTime.Seconds.Or(0) != 61.5 {
		t.Fatalf("%v %v %+v", err, unknown, v)
	}
	lap(NewStopwatch(v, noon), v, 30*time.Second)
	data, err := v.Encode()
	if err != nil || !strings.Contains(string(data), `"sittings": 3`) || !strings.Contains(string(data), `"seconds": 91`) || !strings.Contains(string(data), `"typed": 900`) {
		t.Errorf("%v\n%s", err, data)
	}
}

func TestDecodeRefusesDamagedTime(t *testing.T) {
	schema := compiled(t)
	for _, spent := range []string{`7`, `[]`, `{"seconds":-1}`, `{"seconds":null}`, `{"seconds":"9"}`, `{"seconds":2e6}`, `{"sittings":1.5}`, `{"sittings":-1}`, `{"sittings":3000000}`} {
		in := `{"format":"cutbrief-visit","version":2,"spent":` + spent + `,"answers":[]}`
		if _, _, err := Decode([]byte(in)); err == nil || !strings.Contains(err.Error(), "spent") {
			t.Errorf("%s: %v", spent, err)
		}
		if validate(t, schema, in) == nil {
			t.Errorf("%s: the schema takes it", spent)
		}
	}
}
