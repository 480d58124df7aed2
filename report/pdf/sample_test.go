package pdf

import (
	"time"

	"cutbrief/report"
	"cutbrief/rules/demonstration"
)

// sample is a full, ordinary brief. All of it is invented.
func sample() report.Brief {
	return report.Brief{
		Title: "Cutting recommendation", Outcome: "recommended",
		Demo: "Invented data: customer, systems and prices are made up for practice. Do not order from this page.",
		Date: time.Date(2026, 11, 25, 0, 0, 0, 0, time.UTC),
		Who: []report.Line{
			{Label: "Customer", Value: "Brook Farm Machinery Repair"}, {Label: "Contact", Value: "A. Miller"}, {Label: "Place", Value: "Lower Brook"},
			{Label: "Date", Value: "25 November 2026"}, {Label: "Representative", Value: "T. Weaver"}, {Label: "Decides", Value: "the owner, before spring"},
		},
		Need:     "You cut mild steel, 10 mm most days and 12 mm at most, and stainless, 3 mm most days and 6 mm at most, for repair work at irregular times.",
		Headline: "Demo 65, 65 A",
		Because: []string{
			"It is rated for 16 mm by hand; this work needs 12 mm: 12 mm × 1 for repair work.",
			"It fits with the least to spare of the systems that fit.",
			"No open answer would change this choice.",
		},
		Second: "Second choice: Demo 85. It would be right if the thickest regular cut were above 16 mm.",
		Bars: []report.Bar{
			{Label: "Clean cut", Need: "needs 12 mm", Have: "gives 16 mm", Verdict: "met", NeedShare: 0.75, HaveShare: 1},
			{Label: "Rare thickest", Need: "needs 20 mm", Have: "gives 25 mm", Verdict: "met", NeedShare: 0.8, HaveShare: 1},
			{Label: "Pierce", Need: "needs 10 mm", Have: "gives 10 mm", Verdict: "met", NeedShare: 1, HaveShare: 1},
			{Label: "Bevel", Need: "needs 8.5 mm", Have: "gives 20 mm", Verdict: "met", NeedShare: 0.42, HaveShare: 1},
			{Label: "Breaker", Need: "needs 40 A", Have: "gives 32 A", Verdict: "falls short", NeedShare: 1, HaveShare: 0.8},
			{Label: "Air flow", Need: "needs 190 l/min", Have: "gives 250 l/min", Verdict: "met", NeedShare: 0.76, HaveShare: 1},
		},
		Critical: "Low distortion",
		Evidence: []report.Line{
			{Label: "said", Value: "They say the pieces warp."},
			{Label: "inferred", Value: "A gas flame warps material up to 6 mm."},
			{Label: "inferred", Value: "Thin sheet that will be seen shows every ripple."},
		},
		ShownBy: "Shown first, by: straight cut, tip on the work, along a straight edge.",
		Plan: []report.Row{
			{Cut: "Straight cut, tip on the work, along a straight edge", Piece: "3 mm stainless", Setting: "40 A, tip on the work", See: "a straight, narrow cut; the sheet stays flat and can be touched soon"},
			{Cut: "Large circle with the radius guide", Piece: "3 mm stainless", Setting: "40 A, tip on the work", See: "a round disc that drops out flat, and meets its start"},
			{Cut: "The same cut beside today's way", Piece: "10 mm mild steel", Setting: "65 A, stand-off 3 to 6 mm", See: "both times and both edges, side by side on the bench"},
			{Cut: "The rare thickest piece, severed", Piece: "20 mm mild steel", Setting: "65 A, stand-off 3 to 6 mm", See: "a severance cut is slow and leaves a rough face: that is what to expect"},
			{Cut: "The customer's own piece", Piece: "12 mm mild steel", Setting: "65 A, stand-off 3 to 6 mm", See: "their part, cut as they need it"},
		},
		PlanNote: []string{
			"New consumables and one test cut before the customer looks.", "Steady bench at waist height.",
			"Pull the torch, do not push it: lead angle 5 to 10°, and the arc trails 5 to 10° below. Where the manual says otherwise, the manual decides.",
		},
		Confirm: []report.Line{
			{Label: "Supply", Value: "single-phase, 230 V", Why: "Circuit, breaker and earth: a licensed electrician confirms them."},
			{Label: "Compressor delivery", Value: "not known", Why: "The air may fall short of what the torch needs."},
			{Label: "Rare thickest, stainless", Value: "assumed 8 mm", Why: "Above 22 mm the next larger system would be right."},
		},
		Flags: []string{"Nobody cuts or watches without a filter lens of the right shade. Bring enough for every onlooker."},
		Excluded: []report.Line{
			{Label: "Demo 30", Why: "clean cut: needs 12 mm, gives 8 mm."}, {Label: "Demo 45", Why: "clean cut: needs 12 mm, gives 10 mm."},
			{Label: "Demo 105", Why: "three-phase only; the site has single-phase."},
		},
		Notes:    []string{"“The grinder takes all morning and then the sheet looks like a saddle.”", "Gate at the back; ring the bell."},
		Cautions: cautions(),
		Footing: []string{
			"Range: built-in demo range. Day of the visit: 25 November 2026.",
			"What the figures rest on: common practice, no source; published source; from memory.",
		},
	}
}

// cautions are of the usual number and length.
func cautions() []report.Line {
	return []report.Line{
		{Value: "Filter lens shade 8 or darker (below 300 A) over safety glasses, for everyone who sees the arc, onlookers too.", Source: "29 CFR 1910.133(a)(5), and OSHA's fact sheet on it", Hazard: demonstration.Arc},
		{Value: "The manual, the site's rules and local codes come first wherever they ask more than this page.", Hazard: demonstration.AnyHazard},
		{Value: "What can burn: at least 35 ft (11 m) away, or shielded; floor swept as far; extinguisher ready.", Source: "29 CFR 1910.252(a)(2)", Hazard: demonstration.Fire},
		{Value: "Fire watch at least 30 min after the last cut where fire is possible; many sites ask 60 min.", Source: "29 CFR 1910.252(a)(2)(iii)(B)", Hazard: demonstration.Fire},
		{Value: "No drum, tank or pipe that held something that burns, unless cleaned of it and its vapour; vent hollow parts first.", Source: "29 CFR 1910.252(a)(3)", Hazard: demonstration.Explosion},
		{Value: "Extraction at the cut indoors, however short the cut; a suitable mask outdoors; heads out of the plume.", Source: "HSE safety alert STSU1, 2019", Hazard: demonstration.Fume},
		{Value: "Ask for coating, filling and last contents of every piece; no unknown scrap.", Hazard: demonstration.Explosion},
		{Value: "Hearing protection: due from 85 dB(A) over a working day, and a torch is often louder.", Source: "Directive 2003/10/EC, Art. 3", Hazard: demonstration.Noise},
		{Value: "Dry gloves, dry place, no rain; work clamp on clean metal of the piece; supply off before touching torch parts.", Source: "ANSI Z49.1, clause 11 (from memory)", Hazard: demonstration.Shock},
		{Value: "Circuit, breaker and earth are for a licensed electrician to confirm.", Hazard: demonstration.Shock},
		{Value: "Anyone with a pacemaker or implant stays away until a doctor agrees.", Source: "ANSI Z49.1 (from memory)", Hazard: demonstration.MagneticField},
		{Value: "Stainless fume carries chromium VI, which causes cancer: 5 µg/m³ of air at most over 8 h. Extraction at the cut, always.", Source: "29 CFR 1910.1026(c)", Hazard: demonstration.Fume, Raised: true},
		{Value: "Parts degreased with chlorinated solvent: washed with water, dried and aired before the arc.", Source: "US Army TM 55-1930-209-14&P-15, para 3-8.3", Hazard: demonstration.Fume, Raised: true},
	}
}
