package cite

// practiceSources are cited by the practice room.
var practiceSources = []Source{}
