package report

// Picture is lines by thickness with their axes, all places as shares of these.
type Picture struct {
	Title          string
	Up, Across     string // what the axes count
	Ticks, UpTicks []CurveTick
	Lines          [2]PictureLine // a solid one, and one in dashes
	Marks          []SpeedMark    // the customer's own thicknesses, each with its label
	Clean          *float64       // where the edge stops to come out clean
	Everyday       *CurveTick     // the thickness of most days, nil where it is a mark
	Crossing       CurveRange     // where the lines cross, empty where they cannot
	Rests          string         // what it rests on
}

// PictureLine is one of them; black or in the colour of the page.
type PictureLine struct {
	Name   string
	Black  bool
	Points [][2]float64
}

// CostPicture is what cutting costs by thickness, with the system and with
// oxy-fuel; nil where there is no such line.
func CostPicture(of *Cost) *Picture {
	if of == nil || of.Curves == nil || len(of.Curves.Points) < 2 {
		return nil
	}
	c := of.Curves
	p := &Picture{Title: c.Title, Up: c.Up, Across: c.Across, Ticks: c.Ticks, UpTicks: c.UpTicks, Everyday: c.Everyday, Crossing: c.Crossing,
		Lines: [2]PictureLine{{Name: c.Plasma}, {Name: c.Flame, Black: true}}}
	for _, at := range c.Points {
		p.Lines[0].Points = append(p.Lines[0].Points, [2]float64{at.At, at.PlasmaShare})
		p.Lines[1].Points = append(p.Lines[1].Points, [2]float64{at.At, at.FlameShare})
	}
	return p
}

// SpeedPicture is how fast the system cuts: the solid line as long as the edge
// comes out clean, the dashes to where it severs no more; nil where there is no
// such line.
func SpeedPicture(s *Speeds) *Picture {
	if s == nil || len(s.Line) < 2 {
		return nil
	}
	p := &Picture{Title: s.Title, Up: s.Up, Across: s.Across, Ticks: s.Ticks, UpTicks: s.UpTicks, Clean: &s.CleanAt, Rests: s.Rests,
		Lines: [2]PictureLine{{Name: s.Clean}, {Name: s.Severed}}}
	for _, at := range s.Line {
		for i, on := range []bool{at.At <= s.CleanAt, at.At >= s.CleanAt} {
			if on {
				p.Lines[i].Points = append(p.Lines[i].Points, [2]float64{at.At, at.Share})
			}
		}
	}
	for _, m := range s.Marks {
		if m.Yours {
			p.Marks = append(p.Marks, m)
		}
	}
	return p
}

// PictureOf is the one picture that tells most: what cutting costs by thickness
// where a flame cuts today, else how fast the system cuts; nil where there is none.
func PictureOf(b *Brief) *Picture {
	if p := CostPicture(b.Cost); p != nil {
		return p
	}
	return SpeedPicture(b.Speeds)
}

// AxisShare holds a share of an axis between its ends, also where it is no number.
func AxisShare(share float64) float64 {
	if !(share > 0) {
		return 0
	}
	return min(share, 1)
}
