package assess

import (
	"slices"
	"strings"

	"cutbrief/rules"
	"cutbrief/rules/unit"
)

// The words by which a free sentence is understood, in English and German. They
// are of our own collecting: common practice, no source. A word that ends in a
// star stands for all words that begin so.

// conjunctions part clauses.
var conjunctions = []string{"and", "but", "und", "aber", "sonst", "otherwise"}

// denials make a clause say the opposite.
var denials = []string{"no", "not", "never", "don't", "doesn't", "isn't", "won't", "can't", "without", "neither", "nor", "hardly", "nothing", "none",
	"kein*", "nicht", "nie", "niemals", "ohne", "weder", "kaum"}

// alternatives go on with what was denied.
var alternatives = []string{"nor", "or", "oder", "noch"}

// voids make nothing of a clause and of those behind it: wishes, plans, conditions,
// the past, and what is somebody else's.
var voids = []string{"want*", "would", "wish*", "hope*", "plan", "plans", "planning", "planned", "like to", "next year", "next month", "next week", "soon", "maybe", "perhaps", "if", "could", "might", "may",
	"thinking of", "thinking about", "will", "going to", "some day", "someday", "one day", "later", "in future", "in the future", "should", "need to", "needs to", "need a new", "would need", "looking for", "ordered", "buy*", "instead of",
	"used to", "last year", "years ago", "had", "was", "were", "before", "formerly", "once had", "sold",
	"brother*", "neighbour*", "neighbor*", "competitor*", "other shop", "next door", "friend*", "son's", "supplier*", "their", "his", "her",
	"possibly", "unless", "wonder", "ask*", "guess", "no idea", "not sure", "don't know", "than",
	"möchte*", "würde*", "wollen", "will", "wünsch*", "hoffe*", "planen", "plane", "planung", "nächste*", "bald", "vielleicht", "eventuell", "falls", "wenn", "könnte*", "irgendwann", "später", "künftig", "sollte*", "bräuchte*", "suche*", "kaufe*", "statt",
	"früher", "letzte*", "vor jahren", "hatte*", "war", "waren", "damals", "verkauft",
	"bruder*", "nachbar*", "konkurrenz", "freund*", "ihrer", "seine*", "weiß nicht", "als"}

// limits are ways to say "at most" that have a "no" in them, and "sometimes" that
// have an "and".
var limits = strings.NewReplacer("no more than", "at most", "not more than", "at most", "no thicker than", "at most", "nicht mehr als", "höchstens", "nicht dicker als", "höchstens",
	"now and then", "sometimes", "now and again", "sometimes", "liter die minute", "l/min", "liter pro minute", "l/min", "litres a minute", "l/min", "ab und zu", "manchmal", "hin und wieder", "manchmal")

// usualMains are voltages said without their unit beside a phase.
var usualMains = []string{"110", "115", "120", "208", "220", "230", "240", "380", "400", "415", "480"}

// optionCue is a way to name an option of a question, or, of a question about a
// figure, the known zero "none".
type optionCue struct {
	fact    rules.Fact
	option  string
	denies  bool // said with a "no": "no compressor"
	phrases []string
	unless  []string // that make it something else
}

var machines = []string{"compressor*", "generator*", "saw", "machine*", "truck*", "lorry", "rods", "wire", "kompressor*", "maschine*", "säge", "elektroden", "draht"}

var optionCues = []optionCue{
	{rules.FactMetals, "mild-steel", false, []string{"mild steel", "black steel", "black mild", "schwarzblech*", "carbon steel", "structural steel", "baustahl", "schwarzstahl", "unlegiert*"}, machines},
	{rules.FactMetals, "galvanised-steel", false, []string{"galvanised*", "galvanized*", "galv", "zinc coated", "verzinkt*"}, machines},
	{rules.FactMetals, "stainless", false, []string{"stainless*", "inox", "edelstahl*", "nirosta"}, append([]string{"brush*", "welding"}, machines...)},
	{rules.FactMetals, "aluminium", false, []string{"aluminium", "aluminum", "alu", "ally", "aluminiumblech*", "alublech*"}, append([]string{"ladder*", "leiter*"}, machines...)},
	{rules.FactMetals, "copper-brass", false, []string{"copper", "brass", "kupfer", "messing"}, append([]string{"pipe fittings", "cable*", "kabel*"}, machines...)},
	{rules.FactMetals, "cast-iron", false, []string{"cast iron", "gusseisen", "grauguss"}, machines},
	{rules.FactUse, "maintenance", false, []string{"repair work", "repairs", "odd jobs", "maintenance work", "mostly repair", "only repair", "all repair*", "all mending", "ist alles reparatur", "reparaturen", "instandhaltung", "reparaturarbeiten"}, append([]string{"production", "serie*", "produktion"}, machines...)},
	{rules.FactUse, "production", false, []string{"production", "series work", "production work", "in serie", "serienfertigung", "produktion"}, []string{"light production", "repair*", "reparatur*", "line", "manager", "leiter"}},
	{rules.FactUse, "mixed", false, []string{"light production", "bit of both", "some of both", "repair as well as production", "kleinserie*", "beides gemischt"}, nil},
	{rules.FactStart, "edge", false, []string{"from the edge", "at the edge", "edge start*", "von der kante", "an der kante"}, []string{"middle", "pierc*", "mitte", "lochstech*"}},
	{rules.FactStart, "middle", false, []string{"in the middle of the plate", "middle of the sheet", "through the middle", "always pierce", "mitten im blech", "mitten ins blech", "in der mitte der platte"}, []string{"edge", "kante"}},
	{rules.FactFeatures, "straight", false, []string{"straight cuts", "straight lines", "gerade schnitte"}, nil},
	{rules.FactFeatures, "shapes", false, []string{"shapes", "contours", "konturen", "formen"}, nil},
	{rules.FactFeatures, "circles", false, []string{"circles", "discs out of", "kreise", "ronden"}, nil},
	{rules.FactFeatures, "holes", false, []string{"holes", "bolt holes", "löcher", "bohrungen"}, []string{"blow", "drill*", "punch*", "bohre*"}},
	{rules.FactFeatures, "bevels", false, []string{"bevel", "bevels", "bevelling", "weld prep", "fasen", "schrägschnitte"}, nil},
	{rules.FactFeatures, "gouging", false, []string{"gouge", "gouging", "fugenhobeln", "ausfugen"}, nil},
	{rules.FactFeatures, "gaps", false, []string{"grating", "mesh", "expanded metal", "gitterrost*", "streckmetall", "lochblech*"}, []string{"floor*", "boden*"}},
	{rules.FactEdgeNext, "welded", false, []string{"gets welded", "get welded", "is welded after", "welded afterwards", "verschweißt", "weld it afterwards", "wird geschweißt", "danach geschweißt", "anschließend geschweißt"}, nil},
	{rules.FactEdgeNext, "machined", false, []string{"gets machined", "get machined", "machined afterwards", "wird bearbeitet", "wird gefräst", "danach gefräst"}, nil},
	{rules.FactEdgeNext, "painted-seen", false, []string{"gets painted", "get painted", "painted afterwards", "edge stays in view", "edge is seen", "wird lackiert", "danach lackiert", "kante bleibt sichtbar"}, nil},
	{rules.FactEdgeNext, "scrap", false, []string{"goes to scrap", "only scrap", "just scrap", "for scrap", "chuck it", "in den schrott", "nur schrott"}, nil},
	{rules.FactGuidance, "by-hand", false, []string{"freehand", "free hand", "by hand", "freihand", "von hand"}, []string{"guide", "template", "straight edge", "schablone", "führung", "grind*", "schleif*"}},
	{rules.FactGuidance, "guided", false, []string{"along a straight edge", "with a template", "with a guide", "radius guide", "mit schablone", "am lineal", "mit führung"}, nil},
	{rules.FactGuidance, "mechanised", false, []string{"on a carriage", "on a table", "cutting table", "with a carriage", "auf dem schneidtisch", "mit fahrwagen", "auf einem schneidtisch"}, nil},
	{rules.FactPlaces, "bench", false, []string{"at the bench", "on the bench", "in the workshop", "an der werkbank", "in der werkstatt"}, []string{"tool*", "box", "werkzeug*"}},
	{rules.FactPlaces, "in-place", false, []string{"in place", "where it stands", "an ort und stelle"}, nil},
	{rules.FactPlaces, "up-high", false, []string{"up high", "on a ladder", "on the roof", "on scaffold*", "in der höhe", "auf dem gerüst", "auf der leiter"}, nil},
	{rules.FactPlaces, "field", false, []string{"out in the field", "in the field", "on building sites", "on site", "im freien", "auf der baustelle", "auf montage"}, []string{"compressor", "permit*", "generator"}},
	{rules.FactSource, "mains", false, []string{"from the mains", "off the mains", "mains power", "on the mains", "aus dem netz", "am netz"}, []string{"generator*", "stromerzeuger"}},
	{rules.FactSource, "generator", false, []string{"off a generator", "kva genny", "über ein aggregat", "from a generator", "on a generator", "only a generator", "vom stromerzeuger", "am stromerzeuger", "nur generator"}, []string{"mains", "netz", "sometimes", "manchmal"}},
	{rules.FactSource, "both", false, []string{"mains or generator", "mains plus generator", "mains as well as a generator", "netz oder generator", "netz oder stromerzeuger"}, nil},
	{rules.FactPhases, "single", false, []string{"single phase", "single-phase", "one phase", "1 phase", "1-phase", "einphasig", "1-phasig", "lichtstrom"}, nil},
	{rules.FactPhases, "three", false, []string{"three phase", "three-phase", "3 phase", "3-phase", "dreiphasig", "3-phasig", "drehstrom", "kraftstrom"}, nil},
	{rules.FactCord, "none", true, []string{"extension cord*", "extension lead*", "extension", "verlängerung*"}, nil},
	{rules.FactDrier, "none", true, []string{"dryer", "drier", "air dryer", "trockner", "lufttrockner"}, []string{"refrigerant", "desiccant", "kältetrockner", "adsorption*"}},
	{rules.FactDrier, "no-compressor", true, []string{"compressor", "compressed air", "kompressor", "druckluft"}, []string{"dry*", "tank", "trock*", "behälter", "problem*"}},
	{rules.FactDrier, "separator", false, []string{"water separator", "water trap", "moisture trap", "wasserabscheider"}, []string{"dryer", "drier", "trockner"}},
	{rules.FactDrier, "refrigerant", false, []string{"refrigerant dryer", "refrigerant drier", "refrigerated dryer", "fridge drier", "fridge dryer", "kältetrockner"}, nil},
	{rules.FactDrier, "desiccant", false, []string{"desiccant", "desiccant dryer", "adsorptionstrockner"}, nil},
	{rules.FactReceiver, "none", true, []string{"air tank", "receiver", "tank", "druckluftbehälter", "druckluftkessel"}, []string{"fuel", "gas", "water", "benzin", "wasser"}},
	{rules.FactHotWork, "permit", false, []string{"hot work permit*", "hot-work permit*", "permit is needed", "heißarbeitserlaubnis", "feuerschein", "schweißerlaubnis"}, nil},
	{rules.FactToday, "oxy-fuel", false, []string{"oxy-fuel", "oxyfuel", "oxy fuel", "oxyacetylene", "oxy-acetylene", "oxy acetylene", "oxy propane", "gas axe", "gas torch", "autogen*", "brennschneiden", "schneidbrenner"}, []string{"weld*"}},
	{rules.FactToday, "abrasive-disc", false, []string{"grinder", "cutting disc*", "abrasive disc*", "cutoff wheel*", "flex", "winkelschleifer", "trennscheibe*"}, []string{"deburr*", "takes", "air", "luft", "after", "afterwards", "clean*", "danach", "nacharbeit*", "entgrat*"}},
	{rules.FactToday, "band-saw", false, []string{"band saw", "bandsaw", "bandsäge"}, nil},
	{rules.FactToday, "shear", false, []string{"shear", "guillotine", "tafelschere", "schlagschere"}, nil},
	{rules.FactToday, "nibbler", false, []string{"nibbler", "knabber*"}, nil},
	{rules.FactToday, "sent-out", false, []string{"send it out", "sent out", "send out", "outsource", "cuts our", "lassen wir beim", "lassen wir schneiden", "geben wir außer haus", "außer haus"}, nil},
	{rules.FactAnnoysMost, "too-slow", false, []string{"too slow", "takes too long", "takes forever", "zu langsam", "dauert zu lange", "dauert ewig"}, machines},
	{rules.FactAnnoysMost, "warps", false, []string{"warps", "warping", "distorts", "distortion", "verzieht sich", "verzug", "verziehen sich"}, nil},
	{rules.FactAnnoysMost, "rough-edge", false, []string{"rough edge*", "edge is rough", "edges are rough", "too much grinding", "kante ist rau", "raue kante*", "zu viel schleifen"}, nil},
	{rules.FactAnnoysMost, "costs-too-much", false, []string{"costs too much", "too expensive", "gas bill is too high", "zu teuer", "kostet zu viel"}, machines},
	{rules.FactAnnoysMost, "too-heavy", false, []string{"too heavy to carry", "too heavy to move", "zu schwer zum tragen", "zu schwer zu tragen"}, nil},
	{rules.FactAnnoysMost, "hard-to-use", false, []string{"hard to use", "hard to learn", "hard to teach", "schwer zu bedienen", "schwer zu lernen"}, nil},
	{rules.FactExperience, "new", false, []string{"new to cutting", "never cut before", "noch nie geschnitten", "neu beim schneiden"}, nil},
}

// figureCue says which question a figure of one kind answers, by the words around
// it. Without phrases its kind is enough.
type figureCue struct {
	fact    rules.Fact
	kind    unit.Kind
	phrases []string
	unless  []string
}

// figureKinds are the kinds tried, those with the more telling units first.
var figureKinds = []unit.Kind{unit.Flow, unit.Pressure, unit.Voltage, unit.Current, unit.ApparentPower, unit.Section, unit.Thickness, unit.Length, unit.Volume, unit.Angle}

var (
	everyday = []string{"most days", "mostly", "usually", "every day", "everyday", "normally", "typically", "typical", "day to day", "day in day", "tagein", "mainly", "meist", "meistens", "normalerweise", "üblich", "üblicherweise", "im alltag", "hauptsächlich", "überwiegend"}
	thickest = []string{"clean through", "thickest", "up to", "max", "maximum", "at most", "heaviest", "no more than", "bis zu", "bis", "dickste", "dickstes", "maximal", "höchstens"}
	rarest   = []string{"sometimes", "now and then", "occasionally", "once in a while", "rarely", "from time to time", "once a month", "twice a year", "once a year", "alle paar wochen", "alle paar monate", "manchmal", "ab und zu", "gelegentlich", "selten", "hin und wieder"}
	pierced  = []string{"blow holes", "pierce", "piercing", "pierced", "wir stechen", "lochstechen", "durchstechen", "stechen", "einstechen", "eingestochen"}
	bevelled = []string{"bevel", "bevels", "bevelled", "bevelling", "weld prep", "fase", "fasen", "angefast"}
	hoses    = []string{"hose", "hoses", "air line", "bore", "schlauch", "luftschlauch", "luftleitung"}
	cords    = []string{"extension*", "cord*", "lead", "leads", "verlängerung*", "kabel"}
	circuits = []string{"breaker", "fuse", "fused", "trip", "mcb", "circuit", "sicherung*", "abgesichert", "automat", "leitungsschutzschalter"}
	paces    = []string{"a day", "per day", "a week", "per week", "each day", "each week", "am tag", "pro tag", "die woche", "pro woche", "in der woche", "täglich", "wöchentlich"}
	pieces   = []string{"long pieces", "wide", "sheets", "width", "away", "wall*", "door*", "lang sind", "breit", "tafeln", "entfernt", "tool*", "screws", "bolt*", "nozzle*", "pipe*", "tube*", "rohr*", "schraube*", "drill*", "bohrer*", "tolerance", "toleranz", "gap", "spalt", "wire"}
)

var figureCues = []figureCue{
	{rules.FactEveryday, unit.Thickness, everyday, slices.Concat(thickest, rarest, pierced, bevelled, hoses, pieces)},
	{rules.FactThickest, unit.Thickness, thickest, slices.Concat(rarest, everyday, pierced, bevelled, hoses, pieces, scraps)},
	{rules.FactRarest, unit.Thickness, rarest, slices.Concat(everyday, pierced, bevelled, hoses, pieces)},
	{rules.FactPierced, unit.Thickness, pierced, slices.Concat(everyday, rarest, bevelled, hoses, pieces)},
	{rules.FactBevelled, unit.Thickness, bevelled, slices.Concat(everyday, rarest, pierced, hoses, pieces)},
	{rules.FactHoseBore, unit.Thickness, hoses, []string{"plate", "sheet", "blech"}},
	{rules.FactBevelAngle, unit.Angle, bevelled, nil},
	{rules.FactCutLength, unit.Length, paces, slices.Concat(hoses, cords, []string{"drive", "walk", "fahren"})},
	{rules.FactCord, unit.Length, cords, slices.Concat(paces, hoses, []string{"torch", "brenner", "work clamp"})},
	{rules.FactHoseLength, unit.Length, hoses, slices.Concat(paces, cords, []string{"torch", "brenner", "gas", "oxygen", "water", "sauerstoff", "wasser"})},
	{rules.FactAltitude, unit.Length, []string{"above sea*", "altitude", "above the sea", "elevation", "über dem meer", "über null", "meereshöhe"}, nil},
	{rules.FactVolts, unit.Voltage, nil, []string{"welder", "batter*", "lamp*", "control*", "schweißgerät", "akku*"}},
	{rules.FactBreaker, unit.Current, circuits, []string{"welder", "cutting current", "torch", "schweißgerät", "brenner", "house", "main"}},
	{rules.FactGenerator, unit.ApparentPower, []string{"generator*", "genset", "genny", "stromerzeuger", "aggregat"}, []string{"peak", "welder", "spitze*"}},
	{rules.FactCordSection, unit.Section, cords, []string{"plate", "wire feed*"}},
	{rules.FactAirDelivery, unit.Flow, []string{"compressor*", "air", "delivers", "gives", "kompressor*", "luft", "liefert", "bringt"}, []string{"displacement", "sweeps", "saugt", "takes", "torch", "gas", "oxygen", "tool*", "grinder", "ansaugleistung", "brenner", "sauerstoff", "werkzeug*"}},
	{rules.FactAirPressure, unit.Pressure, []string{"air", "line", "running", "bei laufendem", "compressor*", "holds", "luft", "leitung", "kompressor*", "hält"}, []string{"oxygen", "gas", "propane", "acetylene", "tyre*", "tire*", "water", "sauerstoff", "propan", "acetylen", "reifen", "wasser", "cut-out", "rest", "hydraulic*", "hydraulik*"}},
	{rules.FactReceiver, unit.Volume, []string{"tank", "receiver", "air tank", "kessel", "behälter", "druckluftbehälter"}, []string{"fuel", "diesel", "water", "cut*", "oil", "weld*", "wasser", "öl", "schneiden", "schweißen"}},
}

var scraps = []string{"scrap", "schrott"}

// period is how often a length is cut, as the question about it is answered.
func (figureCue) period(c *clause) string {
	if c.has("a week", "per week", "each week", "die woche", "pro woche", "in der woche", "wöchentlich") {
		return " a week"
	}
	return " a day"
}

// numberStarts begin a figure said in words.
var numberStarts = []string{"half", "quarter", "inch", "an", "one", "two", "three", "four", "five", "six", "seven", "eight", "nine", "ten", "twelve", "fifteen", "sixteen", "twenty", "thirty", "forty", "fifty", "sixty", "seventy", "eighty", "ninety", "hundred", "a", "five-eighths", "three-eighths", "three-quarter", "three-quarters", "eighth"}

// germanFigures are German words of figures and units in English.
var germanFigures = map[string]string{
	"zoll": "inch", "fuß": "ft", "halb": "half", "halbe": "half", "halber": "half", "halbes": "half", "viertel": "quarter", "dreiviertel": "three-quarters", "liter": "l", "meter": "m", "metern": "m", "millimeter": "mm",
	"ein": "one", "mil": "mm", "zwei": "two", "drei": "three", "vier": "four", "fünf": "five", "sechs": "six", "sieben": "seven", "acht": "eight", "neun": "nine", "zehn": "ten", "zwölf": "twelve", "fünfzehn": "fifteen", "zwanzig": "twenty",
	"grad": "degrees", "litern": "l", "l/min.": "l/min", "mm²": "mm2", "höhenmeter": "m",
}

// inEnglish is a word of a figure as the reader of quantities knows it: German
// words and the decimal comma.
func inEnglish(w string) string {
	if e, ok := germanFigures[w]; ok {
		return e
	}
	if whole, part, ok := strings.Cut(w, ","); ok && len(part) > 0 && part[0] >= '0' && part[0] <= '9' && strings.Trim(whole, "0123456789") == "" {
		return whole + "." + part
	}
	return w
}
