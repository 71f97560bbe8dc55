"""The Places page: cards, price boards, drives, roads."""
