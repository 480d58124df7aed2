package assess

// showingSchema is the form of the record of one demonstration.
func showingSchema() node {
	return node{
		"type":        "object",
		"description": "One demonstration: what was shown, how it went, what was said, what comes next.",
		"properties": node{
			"date":    daySchema("The day it was held."),
			"system":  text(maxLine, "Identifier of the system shown."),
			"cuts":    node{"type": "array", "items": shownSchema(), "maxItems": maxShown, "description": "The cuts that were shown, in order."},
			"words":   text(maxLong, "The customer's own words."),
			"outcome": node{"enum": endings, "description": "How it ended."},
			"because": text(maxLong, "Why that outcome."),
			"against": node{"enum": weights, "description": "What weighed most, where the outcome is no."},
			"objections": node{"type": "array", "maxItems": maxShown, "description": "What spoke against it, and the answers.", "items": node{
				"type":       "object",
				"properties": node{"said": text(maxLong, "What spoke against it."), "answer": text(maxLong, "The answer given.")},
			}},
			"next": node{
				"type":        "object",
				"description": "What was agreed to do next.",
				"properties":  node{"step": text(maxLong, "What is to be done."), "owner": text(maxLine, "By whom."), "date": daySchema("By when.")},
			},
		},
	}
}

func shownSchema() node {
	return node{
		"type":     "object",
		"required": []string{"cut"},
		"properties": node{
			"cut":          text(maxLine, "Identifier of the cut."),
			"name":         text(maxLine, "What it was called."),
			"metal":        node{"enum": metalNames(), "description": "Metal that was cut."},
			"thickness_mm": figureSchema("Thickness, mm."),
			"output_a":     figureSchema("Output of the system, A."),
			"length_mm":    figureSchema("Length of the cut, mm."),
			"took_s":       figureSchema("Time measured, s."),
			"predicted_s":  figureSchema("Time predicted on the day for that length, s."),
			"result":       node{"enum": results, "description": "How the cut went."},
			"why":          text(maxLong, "Why it went so."),
		},
	}
}

func figureSchema(description string) node {
	return node{"type": "number", "exclusiveMinimum": 0, "maximum": FigureMost, "description": description}
}

func daySchema(description string) node {
	return node{"type": "string", "format": "date", "description": description}
}
