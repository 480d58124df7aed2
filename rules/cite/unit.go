package cite

// unitSources are cited by the unit room.
var unitSources = []Source{}
