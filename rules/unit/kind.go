package unit

// Kind says what a number measures, so that one number type can carry any
// conclusion from the rules to the page without losing its unit.
type Kind int

// The kinds, each with the unit a Quantity of it is held in.
const (
	None          Kind = iota // plain number, no unit
	Thickness                 // mm
	Length                    // m: cut length, cord, hose, altitude
	Speed                     // mm/min
	Section                   // mm²
	Current                   // A
	Voltage                   // V
	Power                     // kW
	ApparentPower             // kVA
	Flow                      // l/min free air
	Pressure                  // bar, gauge
	Volume                    // l
	Weight                    // kg
	Share                     // %
	Angle                     // °
	Temperature               // °C
	Time                      // s
	Price                     // currency units
	Count                     // whole things: cuts, days
)

// Quantity is a number with its kind, in that kind's unit.
type Quantity struct {
	Value float64
	Kind  Kind
}

// Style is how lengths are written for a reader: millimetres or inches.
type Style string

// The two styles. Only lengths, speeds, flows, pressures, volumes, weights and
// conductor sizes differ.
const (
	Metric Style = "mm"
	Inch   Style = "in"
)

// Round says which side a rounded number may fall on.
type Round int

// Nearest for what was told; Up for what is required; Down for what is
// available.
const (
	Nearest Round = iota
	Up
	Down
)
