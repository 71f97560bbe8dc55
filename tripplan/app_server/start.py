"""The app with its guards, as `tripplan app` starts it."""

from streamlit.starlette import App

from tripplan.app_server.guarded import guarded_pages

app = App(**guarded_pages())
