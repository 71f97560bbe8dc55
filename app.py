"""The app with its guards; start with `streamlit run app.py`. Its pages: `tripplan/page_list.py`."""

from starlette.middleware import Middleware
from streamlit.starlette import App

from tripplan.app_server.address_lookup import forbid_address_lookup
from tripplan.app_server.crowd import CrowdLimit
from tripplan.app_server.local_guard import LocalGuard
from tripplan.app_server.phone_link import phone_link

forbid_address_lookup()
app = App(
    "tripplan/page_list.py",
    middleware=[Middleware(LocalGuard), Middleware(CrowdLimit)],
    lifespan=phone_link.lifespan,
)
