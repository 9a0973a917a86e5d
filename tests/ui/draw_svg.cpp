#include <doctest/doctest.h>

#include "web/draw/svg_painter.hpp"

using namespace overwater;

TEST_CASE("a hostile text stays text in the markup") {
    Picture picture;
    picture.width = 10;
    picture.height = 10;
    picture.description = "\" onload=\"alert(1)\" x='<&>'";
    picture.text({1, 2}, "</text><script>alert('1')</script>&amp;\"", Ink::text, Face::regular, 16);
    picture.text({1, 2}, std::string("a\0b\x1b", 4), Ink::text, Face::regular, 16);
    const std::string markup = to_markup(svg_of(picture, theme(ThemeName::light)));
    CHECK(markup.find("<script") == std::string::npos);
    CHECK(markup.find("onload=\"") == std::string::npos);
    CHECK(markup.find("aria-label=\"&quot; onload=&quot;alert(1)&quot; x=&#39;&lt;&amp;&gt;&#39;\"") !=
          std::string::npos);
    CHECK(markup.find("&lt;/text&gt;&lt;script&gt;alert(&#39;1&#39;)&lt;/script&gt;&amp;amp;&quot;</text>") !=
          std::string::npos);
    CHECK(markup.find(">ab</text>") != std::string::npos);  // control characters may not stand in a document
}

TEST_CASE("names that are no names are left out of the markup") {
    Element e = Element::named("g");
    e.with("x onload", "1").with("id", "a");
    e.add(Element::named("script src=x"));
    CHECK(to_markup(e) == "<g id=\"a\"></g>");
}

TEST_CASE("an svg element has attributes only, with short numbers") {
    Picture picture;
    picture.width = 96;
    picture.height = 120.5F;
    picture.line({0.123456F, -0.001F}, {10, 20.5F}, Ink::text, 1.5F, true);
    const Element svg = svg_of(picture, theme(ThemeName::light));
    CHECK(to_markup(svg) ==
          "<svg xmlns=\"http://www.w3.org/2000/svg\" width=\"96\" height=\"120.5\" viewBox=\"0 0 96 120.5\" "
          "font-family=\"Overwater Sans, &#39;Source Sans 3&#39;, sans-serif\"><line x1=\"0.12\" y1=\"0\" x2=\"10\" "
          "y2=\"20.5\" stroke=\"#1e2a33\" stroke-width=\"1.5\" stroke-dasharray=\"4.5 3\"></line></svg>");
}
