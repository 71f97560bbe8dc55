"""How the pages look: the style sheet, the drawings, and what stands inside a card."""
