"""Guide: how to use the program, what its figures are worth, and whose work it stands on."""

import streamlit as st

from tripplan.guide import guide_text, topics


def render() -> None:
    """Show one topic of the guide, which the address names."""
    st.title("Guide")
    titles = topics()
    topic = st.selectbox(
        "Topic", list(titles), format_func=titles.__getitem__, key="topic", bind="query-params"
    )
    text = guide_text(topic).split("\n", 1)[1]
    st.markdown(text.replace("$", r"\$"))
