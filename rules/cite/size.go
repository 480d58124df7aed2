package cite

// sizeSources are cited by the size room.
var sizeSources = []Source{}
