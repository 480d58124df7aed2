package pdf

// What a reader loses by what a page leaves out or merges, in points of our own.
// Nothing decisive is left out while anything else can be: all of the rest
// together is worth less than one line of it.
const (
	lossDecisive = 10000 // one reason, requirement not met, thing to confirm, evidence, caution or cut of the demonstration
	lossCut      = 10000 // the end of one text
	lossLines    = 2000  // lines of a text, in the last resort
	lossFigures  = 9     // need and capability of what is met
	lossBars     = 6     // drawing them
	lossCurves   = 28    // the lines of cost by thickness, where a flame cuts today
	lossSpeeds   = 18    // the line of speed by thickness
	lossLow      = 1     // drawing them low
	lossRange    = 12    // drawing what cutting costs
	lossPayback  = 10    // when it pays for itself
	lossMovers   = 4     // what moves the cost most
	lossShownBy  = 4     // how the demonstration shows what decides
	lossSettings = 6     // of the torch, in the demonstration
	lossSee      = 14    // what to look for in it
	lossPlanNote = 5     // how the bench is made ready
	lossMinutes  = 2     // the demonstration in minutes
	lossWhy      = 12    // why a thing is to be confirmed
	lossNearest  = 2     // the nearest other systems
	lossOthers   = 1     // the other systems
	lossNotes    = 3     // the customer's words and the notes
	lossReasons  = 8     // reasons that stand in one paragraph
	lossMerged   = 1     // another list that becomes one paragraph
	lossFooting  = 16    // what the figures rest on
	lossTitle    = 4     // the title of a zone
	lossSmall    = 6     // what this job raises, in small type
)
