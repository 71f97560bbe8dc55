"""Reading what venues write about prices and hours, by grammar and rules, without a network."""
