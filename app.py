"""The app with its guards; start with `streamlit run app.py`. Its pages: `tripplan/page_list.py`."""

from streamlit.starlette import App

from tripplan.app_server.guarded import guarded_pages

app = App(**guarded_pages())
