"""What would have to change for another of the compared outings to become the cheapest."""
