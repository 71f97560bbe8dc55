"""The price board of a card, to type in without TOML."""
