"""How the pages look: the style sheet, the drawings, the charts, and what stands inside a card."""
