"""The Streamlit pages, one file each, and the few widgets they share."""
