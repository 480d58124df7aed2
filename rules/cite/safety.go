package cite

// safetySources are cited by the safety room.
var safetySources = []Source{}
