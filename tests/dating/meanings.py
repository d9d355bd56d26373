"""Phrases as catalogues and people write them, each with the EDTF it means: one a line."""

from __future__ import annotations

MEANT = """
1912                                        1912
the year 1912                               1912
c. 1910                                     1910~
ca.1910                                     1910~
c1910                                       1910~
circa 1910                                  1910~
1910 ca.                                    1910~
1910 (circa)                                1910~
about 1910                                  1910~
around the 1850s                            185X~
1910?                                       1910?
1910 (?)                                    1910?
probably 1910                               1910?
possibly c. 1912                            1912%
(1910)                                      1910
[ca. 1910]                                  1910~
192-                                        192X
[192-?]                                     192X?
19--                                        19XX
1920s                                       192X
1920's                                      192X
1920’s                                      192X
1920 s                                      192X
the 1920s                                   192X
1 9 2 6                                     1926
1926.                                       1926
early 1920s                                 1920/1923
mid-1920s                                   1924/1926
late 1920s                                  1927/1929
mid to late 1920s                           1924/1929
early to mid-1920s                          1920/1926
1920s (early)                               1920/1923
first half of the 1920s                     1920/1924
19th century                                18XX
19th c.                                     18XX
19thC                                       18XX
C19                                         18XX
18C                                         17XX
nineteenth century                          18XX
mid-nineteenth-century                      1834/1866
early 19th century                          1800/1833
mid-18th century                            1734/1766
late 19th century                           1867/1899
later 19th century                          1850/1899
early- to mid-18th century                  1700/1766
mid- to late-19th century                   1834/1899
first half of the 18th century              1700/1749
2nd half of 19th cent.                      1850/1899
second quarter of the 19th century          1825/1849
2nd quarter, 19th century                   1825/1849
3rd quarter 19th century                    1850/1874
last quarter of the 18th century            1775/1799
last third of the 19th century              1867/1899
19th century, second half                   1850/1899
19th century (late)                         1867/1899
first decade of the 20th century            190X
c. late 19th-early 20th century             1867~/1933~
late 19th-mid 20th century                  1867/1966
19th–early 20th century                     18XX/1933
18th - 19th century                         17XX/18XX
second half of the 19th century–early 20th century   1850/1933
16th or 18th century                        [15XX,17XX]
1800s                                       18XX
late 1700s                                  1767/1799
1900s (decade)                              190X
1890s-1900s                                 189X/190X
1896–1900s                                  1896/190X
early 21st century                          2000/2033
5th century BC                              -04XX
44 BC                                       -0043
100-50 BC                                   -0099/-0049
AD 79                                       0079
ca. 1885–90                                 1885~/1890~
c. 1908 - 1910                              1908~/1910~
1908-c. 1910                                1908/1910~
c.1820-c.1860                               1820~/1860~
about 1924-1927                             1924~/1927~
1924-1927?                                  1924?/1927?
1924?-1927                                  1924?/1927
1926–27                                     1926/1927
1926-27                                     1926/1927
1926-7                                      1926/1927
1926/27                                     1926/1927
1905–10                                     1905/1910
c. 1905-10                                  1905~/1910~
1920-25                                     1920/1925
1865 / 1887                                 1865/1887
1910 to 1915                                1910/1915
between 1910 and 1915                       1910/1915
from 1910 to 1915                           1910/1915
1910 through 1915                           1910/1915
1870-1880s                                  1870/188X
1920s-30s                                   192X/193X
1910s/20s                                   191X/192X
late 1910s–early 1920s                      1917/1923
late 1920s to early 30s                     1927/1933
c. 1761 - early 1770s                       1761~/1773~
1926 or 1927                                [1926,1927]
1926 or 27                                  [1926,1927]
late 18th or early 19th century             [1767..1799,1800..1833]
1933, 1937                                  {1933,1937}
1910, 1912 and 1915                         {1910,1912,1915}
1926, 27, 28                                {1926,1927,1928}
1940s, possibly early 1950s                 [194X,1950?..1953?]
before 1907                                 ../1906
pre-1914                                    ../1913
prior to 1907                               ../1906
before c. 1910                              ../1909~
pre-1912?                                   ../1911?
before the 1920s                            ../1919
before May 1926                             ../1926-04
before 1 May 1926                           ../1926-04-30
by 1917                                     ../1917
until 1917                                  ../1917
no later than 1917                          ../1917
in or before 1917                           ../1917
1917 or earlier                             ../1917
1917 at the latest                          ../1917
after 1920                                  1921/..
post-1945                                   1946/..
after autumn 1912                           1912-12/..
after c.1915                                1916~/..
not before 1917                             1917/..
no earlier than 1905                        1905/..
on or after 1905                            1905/..
1898 or later                               1898/..
1917 onwards                                1917/..
since 1917                                  1917/..
1912+                                       1912/..
after 1914 and before 1920                  1915/1919
Sept. 1926                                  1926-09
September, 1926                             1926-09
1926 May                                    1926-05
1852/XII                                    1852-12
XII 1926                                    1926-12
1858/2                                      1858-02
10/1926                                     1926-10
c. March 1944                               1944-03~
August - September 1954                     1954-08/1954-09
May/June 1926                               1926-05/1926-06
May or June 1926                            [1926-05,1926-06]
Jan. & Feb. 1913                            {1913-01,1913-02}
December 1945 - January 1946                1945-12/1946-01
12 May 1926                                 1926-05-12
12th May 1926                               1926-05-12
Saturday, 12 May 1926                       1926-05-12
May 12, 1926                                1926-05-12
May 12th, 1926                              1926-05-12
1926, May 12                                1926-05-12
5/31/1926                                   1926-05-31
31/5/1926                                   1926-05-31
31.5.1926                                   1926-05-31
12.V.1926                                   1926-05-12
1926/5/12                                   1926-05-12
1926-5-12                                   1926-05-12
June 19-20, 1964                            1964-06-19/1964-06-20
15–20 May 1926                              1926-05-15/1926-05-20
15 May–12 June 1926                         1926-05-15/1926-06-12
June 28 - July 3, 1926                      1926-06-28/1926-07-03
28 Dec 1925 - 3 Jan 1926                    1925-12-28/1926-01-03
early May 1926                              1926-05-01/1926-05-10
late February 1924                          1924-02-21/1924-02-29
early 1926                                  1926-37
late 1926                                   1926-39
first half of 1926                          1926-40
first quarter of 1926                       1926-33
Autumn 1912                                 1912-23
Fall, 1926                                  1926-23
1912 Autumn                                 1912-23
Winter 1912-13                              1912-24
Winter 1912/1913                            1912-24
Autumn and Winter 1912-13                   1912-23/1912-24
Autumn/Winter 1912                          1912-23/1912-24
A/W 1912-13                                 1912-23/1912-24
1912 Autumn-Winter                          1912-23/1912-24
Spring–Summer 1926                          1926-21/1926-22
the spring and summer of 1926               1926-21/1926-22
S/S 1999                                    1999-21/1999-22
winter and spring 1913                      1912-24/1913-21
spring and autumn 1912                      {1912-21,1912-23}
spring 1926 to autumn 1927                  1926-21/1927-23
Victorian                                   1837/1901
Edo period (1603-1867), 19th century        1800/1867
Ming Dynasty, 1368-1644, 16th century       15XX
Meiji period, late 19th century             1868/1899
Edwardian, c. 1905                          1905~
um 1890/95                                  1890~/1895~
vor 1914                                    ../1913
nach 1918                                   1919/..
1920er Jahre                                192X
Anfang der 1920er Jahre                     1920/1923
Ende 19. Jahrhundert                        1867/1899
1. Hälfte 19. Jh.                           1800/1849
zweites Viertel 19. Jahrhundert             1825/1849
12. Mai 1926                                1926-05-12
März 1926                                   1926-03
Herbst/Winter 1912/13                       1912-23/1912-24
zwischen 1910 und 1915                      1910/1915
von 1910 bis 1915                           1910/1915
vers 1880-1890                              1880~/1890~
début du XIXe siècle                        1800/1833
1ère moitié du XIXe siècle                  1800/1849
fin du XVIIIe - début du XIXe siècle        1767/1833
années 1920                                 192X
années 1920-1930                            192X/193X
années 1910-1914                            1910/1914
1er mai 1926                                1926-05-01
août 1926                                   1926-08
automne-hiver 1912-1913                     1912-23/1912-24
entre 1880 et 1890                          1880/1890
hacia 1920                                  1920~
finales del siglo XIX                       1867/1899
siglos XVIII-XIX                            17XX/18XX
último cuarto del siglo XIX                 1875/1899
12 de mayo de 1926                          1926-05-12
otoño e invierno 1912                       1912-23/1912-24
prima metà del XIX secolo                   1800/1849
prima del 1920                              ../1919
ottocento                                   18XX
autunno-inverno 1926-27                     1926-23/1926-24
eind 19e eeuw                               1867/1899
eerste helft 19e eeuw                       1800/1849
tussen 1900 en 1910                         1900/1910
ca. 2200–2100 B.C.                          -2199~/-2099~
1912 January-June                           1912-01/1912-06
1912 Jan 12-15                              1912-01-12/1912-01-15
Summer 1912 or 1913                         [1912-22,1913-22]
1890s on                                    189X/..
from 1890 onward                            1890/..
1926 (spring)                               1926-21
1926, May                                   1926-05
5.1926                                      1926-05
the early part of the 19th century          1800/1833
the latter half of the 19th century         1850/1899
the mid-to-late 1920s                       1924/1929
Ende 18./Anfang 19. Jahrhundert             1767/1833
18./19. Jahrhundert                         17XX/18XX
2. Drittel 19. Jahrhundert                  1834/1866
late 1850s–60s                              1857/186X
second quarter 1700s                        1725/1749
[between 1909 and 1920]                     1909/1920
Fall-Winter, 1926-27                        1926-23/1926-24
"""
PAIRS = [tuple(line.rsplit(None, 1)) for line in MEANT.strip().splitlines()]
