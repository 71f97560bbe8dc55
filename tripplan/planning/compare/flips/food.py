"""Whether food packed or bought changes which place is the cheapest."""

from tripplan.language.sentences import fact
from tripplan.planning.compare.flips.comparison import Comparison
from tripplan.planning.compare.flips.flip import Flip


def other_food(comparison: Comparison) -> Flip:
    """The other way to eat."""
    food = comparison.household.food
    other = "packed" if food.way == "bought" else "bought"
    changed = food.model_copy(update={"way": other})
    answers = comparison.changed(household=comparison.household.model_copy(update={"food": changed}))
    bought = other == "bought"
    now, at = (fact("flips-food-bought", bought=way) for way in (not bought, bought))
    return comparison.flip(fact("flips-food"), now, at, fact("flips-with-food", bought=bought), answers)
