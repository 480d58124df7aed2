package rules

// Edition counts the rules. It is raised with every change to a rule, a factor
// or a formula that can change a result, so that a record can say which rules it
// was sized with.
const Edition = 2
