"""All that a phone sees before it is paired."""

from html import escape

_STYLE = """
body { font-family: system-ui, sans-serif; font-size: 1.25rem; line-height: 1.4;
  color: #141414; background: #fff;
  max-width: 26rem; margin: 0 auto; padding: 1.5rem 1rem; }
h1 { font-size: 1.9rem; line-height: 1.2; }
label { display: block; margin: 1.2rem 0 .3rem; }
input, button { box-sizing: border-box; width: 100%; min-height: 3.5rem; font: inherit;
  border: 2px solid #141414;
  border-radius: .5rem; padding: .5rem .8rem; background: #fff; color: #141414; }
#code { font-size: 2rem; letter-spacing: .3em; }
button { margin-top: 1.5rem; background: #1f6f6b; color: #fff; border-color: #1f6f6b; font-weight: 700; }
:focus-visible { outline: 3px solid #141414; outline-offset: 2px; }
[role=alert] { border: 2px solid #8a1c1c; border-radius: .5rem; padding: .6rem .8rem; font-weight: 700; }
"""


def pairing_page(*, code: str, name: str, told: str = "") -> str:
    """The page with the two fields.

    Args:
        code: what stands in the field of the code at first.
        name: what stands in the field of the name at first.
        told: why the last attempt did not pair the phone.
    """
    alert = f'<p role="alert">{escape(told)}</p>\n' if told else ""
    return f"""<!DOCTYPE html>
<html lang="en">
<head>
<meta charset="utf-8">
<meta name="viewport" content="width=device-width, initial-scale=1">
<title>Pair this phone</title>
<style>{_STYLE}</style>
</head>
<body>
<main>
<h1>Pair this phone</h1>
{alert}<p>Type the six digits that the computer shows.</p>
<form method="post" action="/pair">
<label for="code">Code</label>
<input id="code" name="code" value="{escape(code)}" inputmode="numeric" autocomplete="one-time-code"
  maxlength="9" required>
<label for="name">Name of this phone, for the list on the computer</label>
<input id="name" name="name" value="{escape(name)}" maxlength="40" autocomplete="off" required>
<button>Pair</button>
</form>
</main>
</body>
</html>
"""


def likely_name(user_agent: str) -> str:
    """What kind of phone a browser says it runs on."""
    for kind in ("iPhone", "iPad", "Android"):
        if kind in user_agent:
            return f"{kind} phone" if kind == "Android" else kind
    return "My phone"
