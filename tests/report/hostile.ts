/** Texts that would do harm if they were taken for more than text. */
export const hostile: { readonly [name: string]: string } = {
  'markup': '<script>alert(1)</script><img src=x onerror=alert(1)>',
  'the end of a style': '</style><script>alert(1)</script>',
  'an attribute': '" onload="alert(1)" x="\' onclick=\'alert(1)',
  'an entity': '&lt;script&gt;&#60;script&#62;',
  'control characters': 'one\u0000two\u001b[31mthree\u007f\u0085',
  'marks that turn the text about': 'abc\u202edef\u2066ghi\u2069\u2069jkl',
  'Hebrew': 'רכב חשמלי 850 (א)',
  'half a character': 'broken \ud800 here',
  'a formula of a spreadsheet': '=HYPERLINK("http://evil.example","click")',
  'a string of CSS': '"; } body { display: none } /* \\',
  'Markdown': '# head\n\n| a | b |\n| - | - |\n[link](javascript:alert(1)) `code` **bold** <b>x</b> ![x](y)',
  'another formula': '@SUM(1+1)|cmd',
}
