"""The scripts of other people that the pages carry are those that are noted, with their licences."""

import pytest

from tools.fetch_page_assets import ASSETS, STATIC, Asset, is_as_noted


@pytest.mark.parametrize("asset", ASSETS, ids=lambda asset: asset.name)
def test_each_is_as_noted(asset: Asset) -> None:
    """Else: python tools/fetch_page_assets.py."""
    assert is_as_noted(asset, (STATIC / asset.name).read_bytes())


@pytest.mark.parametrize("asset", ASSETS, ids=lambda asset: asset.name)
def test_its_licence_stands_beside_it(asset: Asset) -> None:
    """Of the very version."""
    name, version = asset.package.split("@")
    assert f"{asset.name}: {name} {version}\n" in (STATIC / "LICENCES.txt").read_text(encoding="utf-8")


def test_another_script_is_found_out() -> None:
    """By its sum."""
    assert not is_as_noted(ASSETS[0], b"alert('ours')")
