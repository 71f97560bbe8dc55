"""The weather of the next days, asked of public services on the internet when the parent presses a button."""
