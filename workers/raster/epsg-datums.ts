/*
 * Made by tests/fixtures/epsg/make-epsg.ts from the EPSG Geodetic Parameter Dataset v10.098; not edited by hand.
 */

/** Codes of oblique Mercator references whose false origin is the natural one (EPSG method 9812). */
export const NATURAL_ORIGIN: readonly number[] = [
  3078, 3079, 3167, 3168, 3375, 3376, 3468, 3591, 5247, 6394, 6497, 6808, 6809, 6810, 6811, 6840,
  6841, 6842, 6843, 24571, 26731, 26931, 29874,
];

/**
 * One datum a line: shift to WGS 84 (metres, arc seconds, parts per million; position vector), most that it
 * may be off in metres, codes of geographic references, of datums, names in lower case, codes of projected
 * references.
 */
export const DATUM_LINES = `
595.48,121.69,515.35,4.115,-2.9383,0.853,-3.408|3|3819|1024|dhungariandatum1909 gcshd1909 hd1909 hungariandatum1909|
0|3|3823 3824 3888 3889 4017 4023 4040 4046 4074 4075 4080 4081 4130 4133 4148 4151 4152 4163 4166 4167 4170 4171 4173 4176 4180 4189 4190 4258 4269 4283 4339 4341 4343 4345 4347 4349 4351 4355 4357 4359 4361 4363 4365 4367 4369 4371 4373 4375 4377 4379 4381 4386 4388 4463 4466 4469 4470 4480 4482 4483 4490 4557 4558 4617 4619 4624 4627 4645 4659 4661 4667 4669 4670 4674 4686 4687 4694 4702 4737 4742 4747 4749 4755 4757 4758 4759 4761 4762 4763 4764 4765 4883 4885 4887 4889 4893 4895 4898 4907 4909 4921 4925 4927 4929 4931 4933 4935 4937 4939 4941 4943 4945 4949 4951 4953 4955 4957 4959 4961 4963 4965 4967 4969 4971 4975 4977 4981 4983 4989 4997 4999 5012 5013 5245 5246 5251 5252 5263 5264 5323 5324 5340 5342 5353 5354 5359 5360 5364 5365 5370 5371 5372 5373 5380 5381 5392 5393 5488 5489 5545 5546 5592 5593 5885 5886 6134 6135 6318 6319 6321 6322 6324 6325 6364 6365 6667 6668 6705 6706 6782 6783 7034 7035 7036 7037 7038 7039 7040 7041 7042 7072 7073 7084 7085 7086 7087 7088 7133 7372 7373 7657 7659 7661 7663 7665 7682 7683 7685 7686 7797 7798 7816 7843 7844 7885 7886 7900 7901 7902 7903 7904 7905 7906 7907 7908 7909 7910 7911 7912 7915 7917 7919 7921 7923 7925 7927 7929 7931 8085 8086 8231 8232 8235 8237 8239 8240 8244 8246 8248 8249 8251 8252 8254 8255 8399 8403 8426 8427 8430 8431 8449 8542 8544 8545 8684 8685 8698 8699 8817 8818 8860 8888 8899 8900 8901 8902 8906 8907 8916 8918 8920 8922 8924 8926 8928 8930 8932 8934 8936 8938 8940 8942 8944 8946 8948 8949 8972 8973 8974 8975 8976 8977 8978 8979 8980 8981 8982 8983 8984 8985 8986 8987 8988 8989 8990 8991 8992 8993 8994 8995 8996 8997 8998 8999 9000 9002 9003 9005 9006 9008 9009 9011 9012 9013 9014 9016 9017 9018 9019 9053 9054 9055 9056 9057 9059 9060 9061 9062 9063 9064 9065 9066 9067 9068 9069 9071 9072 9074 9075 9139 9140 9147 9148 9152 9153 9183 9184 9293 9294 9308 9309 9379 9380 9469 9470 9695 9696 9701 9702 9754 9755 9776 9777 9778 9779 9781 9782 9783 9784 9989 9990 10177 10178 10283 10284 10298 10299 10300 10304 10305 10307 10309 10310 10311 10312 10327 10328 10413 10414 10474 10475 20040 20041 20045 20046|1026 1029 1032 1033 1034 1035 6130 6133 6148 6151 6152 6163 6166 6167 6170 6171 6173 6176 6180 6189 6190 6258 6269 6283 1038 1036 1042 1043 1047 6140 6619 6624 6627 6645 6659 6661 6667 6126 6670 6674 6686 6687 6694 6702 6737 6742 6747 6749 6755 6757 6758 6759 6761 6762 6763 6764 6765 1041 1056 1057 1058 1060 1062 1063 1064 1065 1066 1067 1068 1069 1073 1076 1078 1095 1100 1116 1117 1118 1120 1128 1132 1133 1113 1147 1159 1160 1167 1168 1174 1187 1192 1193 1194 1195 1196 1197 1198 1209 1208 1212 1214 1220 1218 1211 1166 1223 1225 1243 1227 1228 1229 1230 1231 1232 1233 1234 1235 1236 1237 1238 1239 1240 1241 1242 6647 6648 6649 6650 6651 6652 6653 6654 6655 6656 6896 1061 1165 1244 1245 1246 1247 1141 1248 1191 1152 1153 1154 1155 1156 1178 1179 1180 1181 1182 1183 1184 1185 1186 1204 1206 1221 1249 1251 1252 1253 1254 1263 1291 1272 1293 1304 1305 1309 1312 1313 1322 1333 1353 1355 1356 1357 1358 1365 1367 1327 1329|aad98 atrf2014 atrf2014latlon australianantarctic australianantarcticdatum1998 australianterrestrialreferenceframe2014 autonomousregionsofportugal2008 bbt2000 bda2000 bermuda2000 bgs2005 bhetrs89 bhutannationalgeodeticdatum brennerbasetunnel2000 brennerbasistunnel bulgariageodeticsystem2005 caymanislandsgeodeticdatum2011 cgcs2000 cgcs2000latlon china2000 chinageodeticcoordinatesystem2000 chtrf95 chtrs95 cigd11 costarica2005 cr05 cr14 croatianterrestrialreferencesystem crsirgas datumgeodesinasional1995 daustralianantarctic1998 dbermuda2000 dbhutannationalgeodeticdatum dcaymanislandsgeodeticdatum2011 dchina2000 dcostarica2005 dcroatianterrestrialreferencesystem ddatumgeodesinasional1995 destonia1992 destonia1997 detrf1989 detrs1989 dfehmarnbeltdatum2010 dgda1994 dgdbd2009 dgdm2000 dgn95 dgreenland1996 dhartebeesthoek1994 digm1995 diraqigeospatialreferencesystem diraqkuwaitboundary1992 direnet95 dislandsnetwork1993 dislandsnetwork2004 ditrf1988 ditrf1989 ditrf1990 ditrf1991 ditrf1992 ditrf1993 ditrf1994 ditrf1996 ditrf1997 ditrf2000 ditrf2005 ditrf2008 djamaica2001 djgd2011 dkoreageodeticdatum2002 dkoreandatum1995 dkyrgyzrepublic2006 dlatvia1992 dlithuania1994 dmacao2008 dmagna dmarcogeodesiconacional dmauritania1999 dmexicandatumof1993 dmexicoitrf2008 dmoldref99 dmoznet dnad19832011 dnad1983cors96 dnad1983ma11 dnad1983marp00 dnad1983nsrs2007 dnad1983pa11 dnad1983pacp00 dnorthamerican1983 dnorthamerican1983csrs dnorthamerican1983harn dnzgd2000 dpapuanewguineageodeticdatum1994 dperu96 dpitcairn2006 dposgar1994 dposgar1998 dposgar2007 dptra08 dredgeodesicadecanarias1995 dregven dreseaugeodesiquedelapolynesiefrancaise dreseaugeodesiquedelardc2005 dreseaugeodesiquedemayotte2004 dreseaugeodesiquedenouvellecaledonie199193 dreseaugeodesiquedesterresaustralesetantarctiquesfrancaises2007 dreseaugeodesiquedestpierreetmiquelon2006 dretedinamicanazionale2008 drgf1993 drgfg1995 drgnc1991 drgr1992 drosssearegiongeodeticdatum2000 drraf1991 drukref03 dserbianreferencenetwork1998 dsgnpmarcariosolis dsirgas dsirgas2000 dsirgases20078 dsirgasrou98 dsloveniageodeticdatum1996 dsvy21 dsweref99 dswisstrf1995 dtongageodeticdatum2005 dturkishnationalreferenceframe dtwd1997 dyemenngn1996 est92 est97 estonia1992 estonia1997 etrf2000 etrf2000epoca20080 etrf2000latlon etrf2000pl etrf2000poland etrf2005 etrf2005latlon etrf2014 etrf2014latlon etrf89 etrf89it etrf89latlon etrf90 etrf90latlon etrf91 etrf91latlon etrf92 etrf92latlon etrf93 etrf93latlon etrf94 etrf94latlon etrf96 etrf96latlon etrf97 etrf97latlon etrs89 etrs89dref912016 etrs89dref91r16 etrs89dref91realization2016 etrs89grs80 europeanterrestrialreferenceframe1989 europeanterrestrialreferenceframe1990 europeanterrestrialreferenceframe1991 europeanterrestrialreferenceframe1992 europeanterrestrialreferenceframe1993 europeanterrestrialreferenceframe1994 europeanterrestrialreferenceframe1996 europeanterrestrialreferenceframe1997 europeanterrestrialreferenceframe2000 europeanterrestrialreferenceframe2005 europeanterrestrialreferenceframe2014 europeanterrestrialreferencesystem1989 europeanterrestrialreferencesystem1989ensemble feh10 feh2010 fehmarnbeltdatum2010 galleriadibasedelbrennero gcsaustralianantarctic1998 gcsbermuda2000 gcschinageodeticcoordinatesystem2000 gcscigd11 gcscr05 gcsdgn1995 gcsdrukref03 gcsestonia1992 gcsestonia1997 gcsetrf1989 gcsetrs1989 gcsfeh2010 gcsgda1994 gcsgdbd2009 gcsgdm2000 gcsgreenland1996 gcshartebeesthoek1994 gcshtrs96 gcsigm1995 gcsigrs gcsigs08 gcsikbd1992 gcsirenet95 gcsisn1993 gcsisn2004 gcsitrf1988 gcsitrf1989 gcsitrf1990 gcsitrf1991 gcsitrf1992 gcsitrf1993 gcsitrf1994 gcsitrf1996 gcsitrf1997 gcsitrf2000 gcsitrf2005 gcsitrf2008 gcsjad2001 gcsjgd2011 gcskoreandatum1995 gcskyrg06 gcslks1992 gcslks1994 gcsmacao2008 gcsmagna gcsmarcariosolis gcsmargen gcsmauritania1999 gcsmexicandatumof1993 gcsmexicoitrf2008 gcsmoldref99 gcsmoznet gcsnad19832011 gcsnad1983cors96 gcsnad1983ma11 gcsnad1983marp00 gcsnad1983nsrs2007 gcsnad1983pa11 gcsnad1983pacp00 gcsnorthamerican1983 gcsnorthamerican1983csrs gcsnorthamerican1983harn gcsnzgd2000 gcsperu96 gcspitcairn2006 gcspng94 gcsposgar1994 gcsposgar1998 gcsposgar2007 gcsptra08 gcsrdn2008 gcsregcan95 gcsregven gcsrgaf09 gcsrgf1993 gcsrgfg1995 gcsrgm2004 gcsrgnc1991 gcsrgnc199193 gcsrgpf gcsrgr1992 gcsrgrdc2005 gcsrgspm2006 gcsrgtaaf07 gcsrraf1991 gcsrsrgd2000 gcssirgas gcssirgas2000 gcssirgaschile2002 gcssirgases20078 gcssirgasrou98 gcsslovenia1996 gcssref98 gcssvy21 gcssweref99 gcsswisstrf1995 gcstgd2005 gcsturef gcstwd1997 gcsyemenngn1996 gda2020 gda2020latlon gda94 gda94latlon gdbd2009 gdm2000 geocentricdatumbruneidarussalam2009 geocentricdatumofaustralia1994 geocentricdatumofaustralia2020 geodeticdatumofmalaysia2000 geodezicheskayasistemakoordinat2011 ggn93 gr96 greenland1996 grs2011 gsk2011 guamgeodeticnetwork1993 hartebeesthoek94 hongkonggeodetic hongkonggeodeticcs htrs96 iersterrestrialreferenceframe1988 iersterrestrialreferenceframe1989 iersterrestrialreferenceframe1990 iersterrestrialreferenceframe1991 iersterrestrialreferenceframe1992 iersterrestrialreferenceframe1993 iersterrestrialreferenceframe1994 igb00 igb00latlon igb08 igb08latlon igb14 igb14latlon igd95 igm95 igrs igs00 igs00latlon igs05 igs05latlon igs08 igs08latlon igs14 igs14latlon igs20 igs20latlon igs97 igs97latlon ikbd92 indonesiangeodeticdatum1995 indonesiangeospatialreferencesystem2013 internationalterrestrialreferenceframe1988 internationalterrestrialreferenceframe1989 internationalterrestrialreferenceframe1990 internationalterrestrialreferenceframe1991 internationalterrestrialreferenceframe1992 internationalterrestrialreferenceframe1993 internationalterrestrialreferenceframe1994 internationalterrestrialreferenceframe1996 internationalterrestrialreferenceframe1997 internationalterrestrialreferenceframe2000 internationalterrestrialreferenceframe2005 internationalterrestrialreferenceframe2008 internationalterrestrialreferenceframe2014 internationalterrestrialreferenceframe2020 iraqigeospatialreferencesystem iraqkuwaitboundarydatum1992 irenet95 islandsnet1993 islandsnet2004 islandsnet2016 isn2004 isn2016 isn93 istitutogeograficomilitaire1995 itrf2000 itrf2000latlon itrf2005 itrf2005latlon itrf2008 itrf2008latlon itrf2014 itrf2014latlon itrf2020 itrf2020latlon itrf88 itrf88latlon itrf89 itrf89latlon itrf90 itrf90latlon itrf91 itrf91latlon itrf92 itrf92latlon itrf93 itrf93latlon itrf94 itrf94latlon itrf96 itrf96latlon itrf97 itrf97latlon jad2001 jamaica2001 japanesegeodeticdatum2011 jaringkontrolgeodesijkg jgd2011 jgd2011latlon kgd2002 kgd2002latlon korea2000 korean1995 koreandatum1995 koreangeodeticdatum2002 kosovaref01 kosovaref012012 kosovaref12 kosovoreferencesystem2001 kyrg06 kyrgyzstangeodeticdatum2006 latvia1992 latviancoordinatesystem2020 latviangeodeticcoordinatesystem1992 lithuania1994etrs89 lks2020 lks92 lks94 lks94etrs89 macao2008 macaogeodeticdatum2008 macariosolis magnasirgas magnasirgas2018 marcodereferenciageodsiconacionaloficial marcogeocentriconacionaldereferencia marcogeocentriconacionaldereferencia2018 marcogeodesiconacionaldebolivia margen mauritania1999 mexicandatumof1993 mexicoitrf2008 mexicoitrf92 mgd2000 moldref99 momraterrestrialreferenceframe2000 moznet moznetitrf94 mtrf2000 nad1983fbn nad1983federalbasenetwork nad1983harncorrected nad1983highaccuracyreferencenetworkcorrected nad83 nad831986 nad831986latlon nad831992ak nad831993as nad831993gu nad831993hi nad831993prvi nad831997prvi nad832002as nad832002gu nad832002prvi nad832007latlon nad832011 nad832011epoch2010latlon nad83canadianspatialreferencesystem nad83continuouslyoperatingreferencestation1996 nad83cors96 nad83cors96epoch19970latlon nad83cors96epoch20020latlon nad83csrs nad83csrs1997 nad83csrs2002 nad83csrs2005 nad83csrs2010 nad83csrs96 nad83csrs96v1 nad83csrs96v1latlon nad83csrs98 nad83csrsv1 nad83csrsv2 nad83csrsv2latlon nad83csrsv3 nad83csrsv3latlon nad83csrsv4 nad83csrsv4latlon nad83csrsv5 nad83csrsv5latlon nad83csrsv6 nad83csrsv6latlon nad83csrsv7 nad83csrsv7latlon nad83csrsv8 nad83csrsv8latlon nad83fbn nad83fbnlatlon nad83federalbasenetwork nad83harn nad83harncorrected nad83harncorrectedlatlon nad83harnlatlon nad83highaccuracyreferencenetwork nad83highaccuracyreferencenetworkcorrected nad83highaccuracyregionalnetwork nad83highprecisiongeodeticnetwork nad83hpgn nad83ma11 nad83ma11epoch2010latlon nad83marp00 nad83marp00latlon nad83nationalspatialreferencesystem2007 nad83nationalspatialreferencesystem2011 nad83nationalspatialreferencesystemma11 nad83nationalspatialreferencesystempa11 nad83nsrs2007 nad83original nad83pa11 nad83pa11epoch2010latlon nad83pacp00 nad83pacp00latlon nationalgeodeticsystemargentina newzealandgeodeticdatum2000 northamericandatum1983 northamericandatumof1983csrs96 northamericandatumof1983csrsversion2 northamericandatumof1983csrsversion3 northamericandatumof1983csrsversion4 northamericandatumof1983csrsversion5 northamericandatumof1983csrsversion6 northamericandatumof1983csrsversion7 northamericandatumof1983csrsversion8 northamericandatumof1983marp00 northamericandatumof1983pacp00 nzgd2000 nzgd2000latlon omannationalgeodeticdatum2014 omannationalgeodeticdatum2017 ongd14 ongd17 papuanewguineageodeticdatum1994 peru96 pitcairn2006 pletrf2000 png94 posgar posgar2007 posgar94 posgar98 posicionesgeodesicasargentinas1994 posicionesgeodesicasargentinas1998 posicionesgeodesicasargentinas2007 posicionesgeodsicasargentinas1994 posicionesgeodsicasargentinas1998 posicionesgeodsicasargentinas2007 ptra08 rdn2008 redepermanentesdeestacionesgnssdeangola redgeodesicadecanarias1995 redgeodesicanacional1992 redgeodesicanacional2008 redgeodesicanacionalitrf2008 redgeodesicanacionalitrf92 redgeodesicaparamineriaenchile redgeodesicavenezolana redgeodsicabsicanacionaldeelsalvador redgeomin referencesystemdeangola2013 regcan95 regven repangol reseaudereferencedesantillesfrancaises1991 reseaugeodesiquedelapolynesiefrancaise reseaugeodesiquedelardc2005 reseaugeodesiquedelareunion1992 reseaugeodesiquedemayotte2004 reseaugeodesiquedenouvellecaledonie2015 reseaugeodesiquedenouvellecaledonie9193 reseaugeodesiquedesaintpierreetmiquelon2006 reseaugeodesiquedesantillesfrancaises2009 reseaugeodesiquedestaaf2007 reseaugeodesiquedesterresaustralesetantarctiquesfrancaises2007 reseaugeodesiquedewallisetfutuna1996 reseaugeodesiquefrancais1993 reseaugeodesiquefrancais1993v1 reseaugeodesiquefrancais1993v2 reseaugeodesiquefrancais1993v2b reseaugeodesiquefrancaisguyane1995 reseaugeodesiquenouvellecaledonie1991 retedinamicanazionale2008 rgaf09 rgaf09latlon rgaf09lonlat rgf93 rgf93lonlat rgf93v1 rgf93v1latlon rgf93v1lonlat rgf93v2 rgf93v2b rgf93v2blatlon rgf93v2blonlat rgf93v2latlon rgf93v2lonlat rgfg95 rgfg95latlon rgfg95lonlat rgm04 rgm04latlon rgm04lonlat rgnc rgnc15 rgnc15latlon rgnc15lonlat rgnc1991 rgnc199193lonlat rgnc91 rgnc9193 rgnc9193latlon rgnc9193lonlat rgpf rgr92 rgr92latlon rgr92lonlat rgrdc2005 rgsh2020 rgspm06 rgspm06latlon rgspm06lonlat rgtaaf07 rgtaaf07latlon rgtaaf07lonlat rgwf96 rgwf96latlon rgwf96lonlat rosssearegiongeodeticdatum2000 rraf1991 rraf91 rsao13 rseaugodsiquefranais1993 rsrgd2000 serbianreferencenetwork1998 serbianspatialreferencesystem2000 shgd2015 sirgas sirgas1995 sirgas2000 sirgas2000latlon sirgas95latlon sirgaschile sirgaschile2002 sirgaschile2010 sirgaschile2013 sirgaschile2016 sirgaschile2021 sirgaschileepoch200200 sirgaschileepoch201000 sirgaschileepoch201300 sirgaschileepoch201600 sirgaschileepoch202100 sirgaschilerealizacin1 sirgaschilerealizacin2 sirgaschilerealizacin3 sirgaschilerealizacin4 sirgaschilerealizacin5 sirgaschilerealization1epoch2002 sirgaschilerealization2epoch2010 sirgaschilerealization3epoch2013 sirgaschilerealization4epoch2016 sirgaschilerealization5epoch2021 sirgascondgf00p01 sirgascondgf00p01latlon sirgascondgf01p01 sirgascondgf01p01latlon sirgascondgf01p02 sirgascondgf01p02latlon sirgascondgf02p01 sirgascondgf02p01latlon sirgascondgf04p01 sirgascondgf04p01latlon sirgascondgf05p01 sirgascondgf05p01latlon sirgascondgf06p01 sirgascondgf06p01latlon sirgascondgf07p01 sirgascondgf07p01latlon sirgascondgf08p01 sirgascondgf08p01latlon sirgasconsir09p01 sirgasconsir09p01latlon sirgasconsir10p01 sirgasconsir10p01latlon sirgasconsir11p01 sirgasconsir11p01latlon sirgasconsir13p01 sirgasconsir13p01latlon sirgasconsir14p01 sirgasconsir14p01latlon sirgasconsir15p01 sirgasconsir15p01latlon sirgasconsir17p01 sirgasconsir17p01latlon sirgascontinuouslyoperatingnetworkdgf00p01 sirgascontinuouslyoperatingnetworkdgf01p01 sirgascontinuouslyoperatingnetworkdgf01p02 sirgascontinuouslyoperatingnetworkdgf02p01 sirgascontinuouslyoperatingnetworkdgf04p01 sirgascontinuouslyoperatingnetworkdgf05p01 sirgascontinuouslyoperatingnetworkdgf06p01 sirgascontinuouslyoperatingnetworkdgf07p01 sirgascontinuouslyoperatingnetworkdgf08p01 sirgascontinuouslyoperatingnetworksir09p01 sirgascontinuouslyoperatingnetworksir10p01 sirgascontinuouslyoperatingnetworksir11p01 sirgascontinuouslyoperatingnetworksir13p01 sirgascontinuouslyoperatingnetworksir14p01 sirgascontinuouslyoperatingnetworksir15p01 sirgascontinuouslyoperatingnetworksir17p01 sirgases20078 sirgasmultiyearsolution2000 sirgasmultiyearsolution2001 sirgasmultiyearsolution2001extended sirgasmultiyearsolution2002 sirgasmultiyearsolution2004 sirgasmultiyearsolution2005 sirgasmultiyearsolution2006 sirgasmultiyearsolution2007 sirgasmultiyearsolution2008 sirgasmultiyearsolution2009 sirgasmultiyearsolution2010 sirgasmultiyearsolution2011 sirgasmultiyearsolution2013 sirgasmultiyearsolution2014 sirgasmultiyearsolution2015 sirgasmultiyearsolution2017 sirgasregven sirgasrou98 sistemadereferenciageocentricoparaamericadelsur1995 sistemadereferenciageocentricoparaamericadelsur2000 sistemadereferenciageocentricoparalasamericas2000 sistemageodesiconacionaldepanamamacariosolis sistemageodsiconacional sistemreferensigeospasialindonesia2013 slovenia1996 sloveniageodeticdatum1996 sonatrachreferenceframe2020 srbetrs89 sref98 srgi2013 sthelenageodeticdatum2015 strs00 svy21 sweref99 swissterrestrialreferenceframe1995chtrf95 swissterrestrialreferencesystem1995 taiwandatum1997 tgd2005 tongageodeticdatum2005 turef turkishnationalreferenceframe twd97 wgs1984g1150 wgs1984g1674 wgs1984g1762 wgs1984g2139 wgs1984g730 wgs1984g873 wgs1984transit wgs84g1150 wgs84g1150latlon wgs84g1674 wgs84g1674latlon wgs84g1762 wgs84g1762latlon wgs84g2139 wgs84g2139latlon wgs84g730 wgs84g730latlon wgs84g873 wgs84g873latlon wgs84original wgs84transit wgs84transitlatlon worldgeodeticsystem1984g1150 worldgeodeticsystem1984g1674 worldgeodeticsystem1984g1762 worldgeodeticsystem1984g2139 worldgeodeticsystem1984g730 worldgeodeticsystem1984g873 worldgeodeticsystem1984transit yemennationalgeodeticnetwork1996 yemenngn96 yngn96|2036-2038 2046-2055 2089-2090 2105-2135 2139-2154 2157-2158 2176-2180 2193 2195-2198 2201-2203 2205 2213 2222-2243 2246-2289 2292 2600 2759-2888 2891-2930 2944-2962 2965-2968 2972 2975 2991-2994 3005-3018 3034-3051 3057 3059 3064-3065 3067 3070-3072 3074-3075 3077-3079 3081-3091 3107-3109 3111-3118 3126-3138 3152-3163 3169-3171 3174-3175 3178-3189 3296-3301 3308 3310-3311 3313 3338 3343-3348 3358 3360-3365 3372-3373 3375-3385 3400-3404 3414 3416-3438 3441-3453 3455-3459 3463-3560 3566-3570 3577-3726 3728-3751 3753-3761 3763-3768 3770 3775-3783 3788-3794 3798-3799 3801-3826 3845-3854 3873-3892 3942-3970 3978-3979 4026 4048-4063 4082-4083 4093-4217 4414 4420-4433 4437-4439 4457 4467-4471 4484-4559 4647 4839 5014-5016 5048 5070-5130 5179-5188 5243-5325 5343-5387 5389-5396 5479-5490 5550-5552 5596 5629 5632-5641 5644-5655 5700 5836-5839 5844 5880-5887 6050-6074 6094-6114 6125 6210-6211 6307 6328-6372 6391-6637 6669-6692 6707-6709 6721 6723-6887 6922-6925 6962 7057-7081 7109-7132 7257-7696 7791-7803 7805 7845-7859 7887-7899 8013-8032 8058-8348 8379-8391 8455-8540 8682 8687-8840 8903-9159 9221-9222 9265 9295-9297 9377 9391 9473-9498 9674 9697-9716 9748-9749 9793-9794 9822-9830 9842-9850 9874-9875 9947 10285-10465 10477 10481-11118 20042-20050 20904-20932 21004-21032 21207-21264 21307-21364 22171-22187 22207-22232 22239-22265 22307-22322 22337-22357 22407-22465 22607-22657 22707-22765 22807-22822 23301-23333 23830-23845 23866-23884 25828-25884 26847-26978 26980-26998 28348-28358 31965-32000 32100-32199
551.7,162.9,467.9,6.04,1.96,-11.38,-4.82|3||||3907 8677
682,-203,480|5||||3908 8678
517.4399,228.7318,579.7954,4.045,4.304,-15.612,-8.312|4||||3910 8679
426.9,142.6,460.1,4.91,4.49,-12.42,17.1|1||||3911-3912 8686
-199.87,74.79,246.62|1|4121|6121|dggrs1987 gcsggrs1987 ggrs87 greekgeodeticreferencesystem1987|2100
-96.062,-82.428,-121.753,4.801,0.345,-1.376,1.496|1|4123|6123|dkkj gcskkj kartastokoordinaattijarjestelma1966 kartastokoordinaattijrjestelm1966|2391-2394 3386-3387
419.3836,99.3335,591.3451,0.850389,1.817277,-7.862238,-0.99496|1|4124|6124|drt1990 gcsrt1990 riketskoordinatsystem1990 rt90|2400 3019-3024
-138.527,-91.999,-114.591,-0.14,3.363,-2.217,11.748|29|4127|6127|dtete gcstete tete tete1960|
-138.527,-91.999,-114.591,-0.14,3.363,-2.217,11.748|23||||2736
-115.064,-87.39,-101.716,-0.058,4.001,-2.062,9.366|33||||2737
-132,-110,-335|17|4129|6129|dobservatario gcsobservatario observatario observatariocamposrodrigues1907|
198,881,317|44||||3176
-180.624,-225.516,173.919,-0.81,-1.898,8.336,16.71006|1|4134|6134|dpdo1993 gcspdo1993 pdosurveydatum1993 psd93|3439-3440
58,-283,-182|14|4135|6135|doldhawaiian gcsoldhawaiian oldhawaiian|3561-3565
11,72,-101|6|4139|6139|dpuertorico gcspuertorico puertorico|3920 3991-3992
23.772,17.49,17.859,-0.3132,-1.85274,1.67299,-5.4262|1|4141|6141|disrael gcsisrael israel israel1993|2039
-124.76,53,466.79|2|4143|6143|abidjan1987 dabidjan1987 gcsabidjan1987|2041 2043 2165
282,726,254|18||||24305-24306 24375
275.57,676.78,229.6|10|4145|6145|dkalianpur1962 gcskalianpur1962 kalianpur1962|
275.57,676.78,229.6|6||||24311
275.57,676.78,229.6|12||||24312 24376
275.57,676.78,229.6|7||||24313
275.57,676.78,229.6|11||||24377
295,736,257|22|4146|6146|dkalianpur1975 gcskalianpur1975 kalianpur1975|24342-24347 24378-24381 24383
-17.51,-108.32,-62.39|5||||2093
674.374,15.056,405.346|2|4149 4801|6149 6801|bern1898bern ch1903 ch1903bern dch1903 gcsbern1898bern gcsch1903|21780-21782
674.374,15.056,405.346|1|4150|6150|ch1903+ dch1903+ gcsch1903+|2056
-133.63,-157.5,-158.62|1|4153|6153|drassadiran gcsrassadiran rassadiran|2057
-110.33,-97.73,-119.85,0.3423,1.1634,0.2715,0.063|1|4154|6154|deuropean1950ed77 ed50ed77 europeandatum19501977 gcseuropean1950ed77|2058 2060-2061
-117,-132,-164|19||||2059
-83,37,124|25|4155|6155|dabola1981 ddabola1981 gcsdabola1981|3461-3462
570.8,85.7,462.8,4.998,1.587,5.261,3.56|14|4156 4818|6156 6818|dsjtsk gcssjtsk gcssjtskferro sjtsk sjtskferro systemoftheunifiedtrigonometricalcadastralnetwork systemoftheunifiedtrigonometricalcadastralnetworkferro systmjednotnejtrigonometrickejsietekatastrlnej systmjednotnejtrigonometrickejsietekatastrlnejferro systmjednotntrigonometrickstkatastrln systmjednotntrigonometrickstkatastrlnferro|5221 5514
-0.465,372.095,171.736|1|4158|6158|dnaparima1955 gcsnaparima1955 naparima1955|2067
-113.997,-97.076,-152.312|2|4159|6159|deuropeanlibyan1979 eld79 europeanlibyandatum1979 gcseuropeanlibyandatum1979|2068-2074 2076-2078 2080 2087
-114.7,-98.5,-150.7|2||||2075 2079
8.88,184.86,106.69|29||||2081
-233.43,6.65,173.64|3||||9285
-76,-138,67|5|4164|6164|dsouthyemen gcssouthyemen southyemen|2091-2092 2395-2396
-173,253,27|25|4165|6165|bissau dbissau gcsbissau|2095
-170,33,326|6|4168|6168|accra daccra gcsaccra|2136-2137
-115,118,426|44|4169|6169|americansamoa1962 damericansamoa1962 gcsamericansamoa1962|3102
-88,4,101|26|4175|6175|dsierraleone1968 gcssierraleone1968 sierraleone1968|2161-2162
24.9,-126.4,-93.2,-0.063,-0.247,-0.041,1.01|1||||2166 2168 2397 3834 5664 5673
24,-123,-94,0.02,-0.25,-0.13,1.1|4||||2167 2398-2399 3835 5665 5674-5675
24,-123,-94,0.02,-0.25,-0.13,1.1|3||||3836 3841 4417 4434
33.4,-146.6,-76.3,-0.359,-0.053,0.844,-0.84|1||||2172-2175 3120 3328-3329 3333 5663 5672
2.3287,-147.0425,-92.0802,-0.3092483,0.32482185,0.49729934,5.68906266|9||||3331 3334
33.4,-146.6,-76.3,-0.359,-0.053,0.844,-0.84|2||||3332
33.4,-146.6,-76.3,-0.359,-0.053,0.844,-0.84|3||||3839
2.3287,-147.0425,-92.0802,-0.3092483,0.32482185,0.49729934,5.68906266|3||||3840 3844
-193,13.7,-39.3,-0.41,-2.933,2.688,0.43|1|4181 9893|6181|dluxembourgreferenceframe gcsluref luref luxembourg1930 luxembourgreferenceframe nouvelletriangulationduluxembourg ntl1930|2169
-422.651,-172.995,84.02|5|4182|6182|azoresoccidental1939 azoresoccidentalislands1939 dazoresoccidentalislands1939 gcsazoresoccidental1939 observatarioflores observatorio1966 observatoriometeorologico1939|2188
-104,167,-38|6|4183|6183|azorescentral1948 azorescentralislands1948 dazorescentralislands1948 gcsazorescentral1948|2189
-203,141,53|44|4184|6184|azoresoriental1940 azoresorientalislands1940 dazoresorientalislands1940 gcsazoresoriental1940|2190
482.5,-130.6,564.6,-1.042,-0.214,-0.631,8.15|1|4188 4299 4300|6188 6299 6300|1975mappingadjustment dosni1952 dtm65 dtm75 gcsosni1952 gcstm65 gcstm75 geodeticdatumof1965 ire65 osni1952 tm65 tm75|29900-29903
-44.183,-0.58,-38.489,2.3867,2.7072,-3.5196,-8.2703|1|4191|6191|alb86 albanian1987 dalbanian1987 gcsalbanian1987|2199 2462
-206.1,-174.7,-87.7|10|4192|6192|ddouala1948 douala1948 gcsdouala1948|2214 3119
-70.9,-151.8,-41.4|1|4193|6193|dmanoca1962 gcsmanoca1962 manoca1962|2215
163.511,127.533,-159.789,0,0,0.814,-0.6|1|4194|6194|dqornoq1927 gcsqornoq1927 qornoq1927|2216-2217
105,326,-102.5,0,0,0.814,-0.6|1|4195|6195|dscoresbysund1952 gcsscoresbysund1952 scoresbysund1952|
-45,417,-3.5,0,0,0.814,-0.6|1|4196|6196|ammassalik1958 dammassalik1958 gcsammassalik1958|
24.47,-130.89,-81.56,0,0,0.13,-0.22|1|4200|6200|dpulkovo1995 gcspulkovo1995 pulkovo1995|
24.82,-131.21,-82.66,0,0,0.16,-0.12|1||||2463-2491 2641-2693 2695-2735 2738-2758 3150-3151 3390 20004-20032 20064-20092
-165,-11,206|6|4201|6201|adindan bluenile1958 dadindan gcsadindan|20135-20138
-127.8,-52.3,152.9|6|4202|6202|agd66 agd66latlon australiangeodeticdatum1966 daustralian1966 gcsaustralian1966|
-129.193,-41.212,130.73,0.246,0.374,0.329,-2.955|3||||3110 5825
-117.808,-51.536,137.784,0.303,0.446,0.234,-0.29|3||||20249-20251
-124.133,-42.003,137.4,-0.008,0.557,0.178,-1.854|4||||20252-20253
-129,-58,152|7||||20254
-119.353,-48.301,139.484,0.415,0.26,0.437,-0.613|4||||20255-20256
-119.353,-48.301,139.484,0.415,0.26,0.437,-0.613|3||||20257-20258
-117.763,-51.51,139.061,0.292,0.443,0.277,-0.191|3|4203|6203|agd84 agd84latlon australiangeodeticdatum1984 daustralian1984 gcsaustralian1984|20348-20358
-145.7,-249.1,1.5|10|4204|6204|ainelabd ainelabd1970 dainelabd1970 gcsainelabd1970|2318 20436-20437
-145.7,-249.1,1.5|9||||20438
-85.645,-273.077,-79.708,2.289,-1.421,2.532,3.194|6||||20439
-85.645,-273.077,-79.708,2.289,-1.421,2.532,3.194|5||||20440
-85.645,-273.077,-79.708,2.289,-1.421,2.532,3.194|3||||20499
-43,-163,45|44|4205|6205|afgooye dafgooye gcsafgooye|20538-20539
-288.885,-91.744,126.244,-1.691,0.41,-0.211,-4.598|2|4207 4803|6207 6803|dlisbon gcslisbon gcslisbonlisbon lisbon lisbon1937 lisbon1937lisbon lisbonlisbon|5018 20790-20791
-156.8,298.41,-147.41|8||||5337
-157.84,308.54,-146.6|1||||20822
-160.4,302.29,-144.19|11||||20824
-145,-97,-292|38|4209|6209|arc1950 darc1950 gcsarc1950|
-142,-96,-293|25||||20934-20935
-161,-73,-317|38||||20936
-157,-2,-299|13|4210|6210|arc1960 darc1960 gcsarc1960|21036
-157,-2,-299|12||||21035 21037
-157,-2,-299|6||||21095-21097
-378.873,676.002,-46.255|6|4211 4813|6211 6813|batavia bataviajakarta dbatavia gcsbatavia gcsbataviajakarta genuk genukjakarta|3001 5330 21149
-378.873,676.002,-46.255|5||||2308 21148
-377.7,675.1,-52.2|5||||21150
31.95,300.99,419.19|3|4212|6212|barbados1938 dbarbados1938 gcsbarbados1938|21291-21292
-106,-87,188|15|4213|6213|beduaram dbeduaram gcsbeduaram|2931
-292.295,248.758,429.447,4.9971,2.99,6.6906,1.0289|1|4216|6216|bermuda1957 dbermuda1957 gcsbermuda1957|3769
304.5,306.5,-318.1|12|4218|6218|bogota bogota1975 dbogota gcsbogota|
304.5,306.5,-318.1|10||||21818
-90.29,247.559,-21.989,8.696885349,4.188033628,12.80826685,2.181658|10||||21891 21896
336.026,348.565,252.978,17.24128944,6.306492822,-1.562049772,-5.771909|12||||21892 21897
336.026,348.565,252.978,17.24128944,6.306492822,-1.562049772,-5.771909|10||||21893 21898
221.899,274.136,-397.554,-2.80844591,0.4485085889,2.810172347,-2.199943|1||||21894 21899
-55.5,-348,-229.2|3||||22091
-154.5,150.7,100.4|7|4221|6221|campoinchauspe dcampoinchauspe gcscampoinchauspe|22191
-154.5,150.7,100.4|8||||2315-2316
-154.5,150.7,100.4|6||||22192
-154.5,150.7,100.4|5||||22193 22197
-154.5,150.7,100.4|4||||22194-22196
-136,-108,-292|9|4222|6222|cape dcape gcscape southafrica|22234 22236 22277-22293
-260.1,5.5,432.2|2|4223 4816|6223 6816|carthage carthageparis dcarthage gcscarthage gcscarthageparis|2088 22332 22391-22392
-143.87,243.37,-33.52|5||||4071
-205.57,168.77,-4.12|5|4225|6225|corregoalegre corregoalegre197072 dcorregoalegre gcscorregoalegre|22521-22525
-190.421,8.532,238.69|8|4227|6227|ddeirezzor deirezzor gcsdeirezzor levant|22770-22780
-130,110,-13|11|4229|6229|degypt1907 egypt1907 gcsegypt1907 oldegyptian|22991-22994
-87,-98,-121|11|4230|6230|deuropean1950 ed50 europeandatum1950 gcseuropean1950|23030
-84.1,-101.8,-129.7,0,0,0.468,1.05|2||||2206-2212 2319-2325 23038
-112,-110.3,-140.2|3||||3066
-84.1,-101.8,-129.7,0,0,0.468,1.05|5||||3893
-84,-97,-117|2||||5627 23090
-84,-97,-117|3||||5643
-89.5,-93.8,-123.1,0,0,-0.156,1.2|1||||23028 23095
-84,-107,-120|12||||23029
-89.5,-93.8,-123.1,0,0,-0.156,1.2|6||||23031
-116.641,-56.931,-110.559,0.8925078166,0.9207660951,-0.916640799,-3.52|4||||23032
-116.641,-56.931,-110.559,0.8925078166,0.9207660951,-0.916640799,-3.52|5||||23033-23034
-86,-96,-120|9||||23035
-87,-95,-120|10||||23036
-83.11,-97.38,-117.22,0.005692908652,-0.04469758351,0.0442850539,0.1218|1|4231|6231|deuropean1987 ed87 europeandatum1987 gcseuropean1987|
-345,3,223|7|4232|6232|dfahud fahud gcsfahud|23239-23240
-637,-549,-203|26|4236|6236|dhutzushan gcshutzushan hutzushan hutzushan1950|3829
52.17,-71.82,-14.9|1|4237|6237|dhungarian1972 gcshungarian1972 hd72 hungariandatum1972|23700
-1.977,-13.06,-9.993,0.364,0.254,0.689,-1.037|3|4238|6238|dindonesian1974 gcsindonesian1974 id74 indonesiandatum1974|23846-23852 23887-23894
217,823,299|21||||23947-23948
293,836,318,0.5,1.6,-2.8,2.1|3|4240|6240|dindian1975 gcsindian1975 indian1975|24047
-33.722,153.789,94.959,-8.581,-4.478,4.54,8.95|1|4242|6242|djamaica1969 gcsjamaica1969 jad69 jamaica1969|24200
-97,787,86|35|4244|6244|dkandawala gcskandawala kandawala|5234
-11,851,5|15|4245|6245|dkertau gcskertau kertau1968 malaysiarevisedtriangulation1968 mrt68|4390-4398 24500-24548
-294.7,-200.1,525.5|1|4246|6246|dkuwaitoilcompany gcskuwaitoilcompany kuwaitoilcompany|24600
-273.5,110.6,-357.9|8|4247|6247|dlacanoa gcslacanoa|24718-24720
-60.31,245.935,31.008,12.324,3.755,-7.37,0.447|17||||2317
-60.31,245.935,31.008,12.324,3.755,-7.37,0.447|5||||24817
-278,171,-367|10||||24818
-60.31,245.935,31.008,12.324,3.755,-7.37,0.447|16||||24819
-298,159,-369|17||||24820-24821
-278,171,-367|13||||24877 24891 24893
-259.73,173.12,-398.27|8||||24880
-259.73,173.12,-398.27|5||||24881
-291.87,106.37,-364.52|10||||24882
-60.31,245.935,31.008,12.324,3.755,-7.37,0.447|12||||24892
-130,29,364|5|4250|6250|dleigon gcsleigon leigon|25000
-90,40,88|26|4251|6251|dliberia1964 gcsliberia1964 liberia1964|
-133,-77,-51|21|4253|6253|dluzon1911 gcsluzon1911 luzon1911|25393-25395
-133,-77,-51|17||||25391-25392
18.38,192.45,96.82,0.056,-0.142,-0.2,-0.0013|6|4254|6254|dhitoxviii1963 gcshitoxviii1963 hitoxviii hitoxviii1963|2084
18.38,192.45,96.82,0.056,-0.142,-0.2,-0.0013|1||||2083
41,-220,-134|44|4256|6256|dmahe1971 gcsmahe1971 mahe1971|
-254.1,-5.36,-100.29|5|4259|6259|dmalongo1987 gcsmalongo1987 malongo1987|7992 25932
31,146,47|7||||26191-26192
639,405,60|44|4262|6262|dmassawa gcsmassawa massawa|26237
-92.1,-89.9,114.9|9|4263|6263|dminna gcsminna minna|26392
-92.1,-89.9,114.9|8||||26331-26391 26393
-104.1,-49.1,-9.9,0.971,-2.917,0.714,-11.68|10|4265 4806|6265 6806|dmontemario gcsmontemario gcsmontemariorome montemario montemariorome roma40 rome1940 rome1940rome|3004
-104.1,-49.1,-9.9,0.971,-2.917,0.714,-11.68|11||||3003
-104.1,-49.1,-9.9,0.971,-2.917,0.714,-11.68|4||||5659
-80.7,-132.5,41.1|1|4266|6266|dmporaloko gcsmporaloko mporaloko|26632-26692
-7,151,178|22|4267|6267|dnorthamerican1927 gcsnorthamerican1927 nad27 nad27latlon northamericandatum1927|
-7,151,178|5||||2204 3080 4413 4455-4456 6202 26729-26730 26746 26748-26750 26753-26757 26768 26771-26780 26782 26785-26786 26792-26799 32005-32007 32011-32014 32019-32025 32028 32030 32034-32035 32037-32039 32042-32044 32046-32047 32050-32051 32054-32058 32064-32065 32099
-7,151,178|6||||3069 3309 4411-4412 5624-5625 6201 6966 26741-26745 26769-26770 32001-32003 32008-32009 32026-32027 32048-32049 32052-32053 32066
4,159,188|8||||3771-3774 3800 26709 32085-32086
2.478,149.752,197.726,0.526,0.498,-0.501,0.685|1||||3795-3796
-9,157,184|15||||3797 4418-4419 5069 7991 26717 26719-26720 26784 32010 32015-32017 32045 32067 32084 32098
-4.2,135.4,181.9|7||||4403-4406 26703-26706 26735-26738
-2,152,149|15||||4407 26707
-7,151,178|18||||4408 26708 26731
-7,162,188|13||||4409 26710-26711 26791
-8,159,175|8||||4410
-22,160,190|9||||5588 26783 32081-32083
-3,154,177|6||||5623
-3,154,177|13||||26712
-4,154,178|13||||26713-26716
-8,160,176|13||||26718
-22,160,190|13||||26721-26722
-4.2,135.4,181.9|6||||26732-26734
-7,151,175|5||||26751-26752 26781 32040-32041 32074-32075
-3,154,177|5||||26758 26787 32077
-2,124.7,196|5||||26759-26767 32031-32033 32061
-8,159,175|7||||32076
-250.7,-157.9,380.4|9|4270|6270|dnahrwan1967 gcsnahrwan1967 nahrwan1967|27039
-233.4,-160.7,381.5,0,0,0.554,0.2263|5||||27040
-2,374,172|26|4271|6271|dnaparima1972 gcsnaparima1972 naparima1972|27120
59.47,-5.04,187.44,0.47,-0.1,1.024,-4.5993|4|4272|6272|dnewzealand1949 gcsnewzealand1949 gd49 newzealandgeodeticdatum1949 nzgd1949latlon nzgd49|27200-27292
278.3,93,474.5,7.889,0.05,-6.61,6.21|3|4273 4817|6273 6817|dngo1948 gcsngo1948 gcsngo1948oslo ngo1948 ngo1948oslo|27391-27398
-239.749,88.181,30.488,0.263,0.082,1.211,2.229|1|4274|6274|datum73 ddatum73 gcsdatum73|27429-27493
-168,-60,320|2|4275 4807|6275 6807|dntf gcsntf gcsntfparis nouvelletriangulationfrancaise nouvelletriangulationfrancaiseparis ntfparis|27561-27594
446.448,-125.157,542.06,0.15,0.247,0.842,-20.489|2|4277|6277|dosgb1936 gcsosgb1936 ordnancesurveyofgreatbritain1936 osgb1936 osgb36|27700
-275.7224,94.7824,340.8944,-8.001,-4.42,-11.821,1|2||||28193
-145,52.7,-291.6|10|4282|6282|congo1960pointenoire dpointenoire gcspointenoire pointenoire|28232
23.57,-140.95,-79.8,0,0.35,0.79,-0.22|3|4284|6284|dpulkovo1942 gcspulkovo1942 pulkovo1942|2492-2549 2551-2576 2578-2599 2601-2640 2936-2937 2939-2941 3350-3352 3389 28402-28492
43.822,-108.842,-119.585,1.455,-0.761,0.737,0.549|3||||2935 7830-7831
43.822,-108.842,-119.585,1.455,-0.761,0.737,0.549|5||||2938
43.822,-108.842,-119.585,1.455,-0.761,0.737,0.549|2||||3146-3147 7825-7829
23.57,-140.95,-79.8,0,0.35,0.79,-0.22|4||||3388
-128.16,-282.42,21.93|1|4285|6285|dqatar gcsqatar1974 qatar1974|28600
565.04,49.91,465.84,-0.4093943874,0.3597051956,-1.868491,4.0772|1|4289|6289|amersfoort damersfoort gcsamersfoort rdbessel|28991-28992
-355,21,72|2|4292|6292|dsapperhill1943 gcssapperhill1943 sapperhill1943|29221
616,97,-251|35|4293|6293|dschwarzeck gcsschwarzeck schwarzeck|29333-29385
-198.383,-240.517,-107.909|3|4297 4810|6297 6810|dtananarive1925 gcstananarive1925 gcstananarive1925paris tananarive tananarive1925 tananarive1925paris tananariveparis|29700 29702-29739
-678,670,-48|5|4298|6298|borneotriangulationof1968 bt68 dtimbalai1948 gcstimbalai1948 timbalai1948 timbalai1968|29849-29874
-147,506,687|7|4301|6301|dtokyo gcstokyo tokyo tokyo1918|3092-3095 30161-30162 30169 30174-30179
-147,506,687|6||||3096 30163-30168 30170-30173
-61.702,284.488,472.052|2|4302|6302|dtrinidad1903 gcstrinidad1903 trinidad1903|2314 30200
-267.407,-47.068,446.357,-0.179423,5.577661,-1.27762,1.204866|1|4307|6307|dnordsahara1959 gcsnordsahara1959 nordsahara1959|30729-30792
-124.45,183.74,44.64,-0.4384,0.5446,-0.9706,-2.1365|2|4309|6309|dyacare gcsyacare rouusams yacare|
-30,190,89|5|4310|6310|dyoff gcsyoff yoff|31028
-265,120,-358|11|4311|6311|dzanderij gcszanderij zanderij|31121-31171
601.705,84.263,485.227,4.7354,1.3145,5.393,-2.3887|2|4312 9267|6312|dmgi gcsmgi hermannskogel militargeographischeinstitut|9271-9273 31251-31259 31281-31297
577.326,90.129,463.919,5.137,1.474,5.297,2.4232|2|4805|6805|gcsmgiferro mgiferro militargeographischeinstitutferro|31275-31277 31279
-99.059,53.322,-112.486,0.419,-0.83,1.885,-1|1|4313|6313|bd72 belge1972 dbelge1972 gcsbelge1972 reseaunationalbelge1972|31300-31370
598.1,73.7,418.2,0.202,0.045,-2.455,6.7|3|4314|6314|ddeutscheshauptdreiecksnetz deutscheshauptdreiecksnetz gcsdeutscheshauptdreiecksnetz potsdam|5520 5677-5678 5680 31463-31464 31467-31468
584.8,67,400.3,0.105,0.013,-2.378,10.29|2||||3068 5676 31462 31466
597.1,71.4,412.1,0.894,0.068,-1.563,7.58|2||||5679 31465 31469
-23,259,-9|30|4315|6315|conakry1905 dconakry1905 gcsconakry1905|31528-31529
103.25,-100.4,-307.19|10|4316|6316|ddealulpiscului1933 dealulpiscului1930 dealulpiscului1933 gcsdealulpiscului1933|31600
-3.2,-5.7,2.8|1|4318|6318|dngn gcsngn nationalgeodeticnetwork|31838-31839
-20.8,11.3,2.4|1|4319|6319|dkuwaitutility gcskudams kudams kuwaitutility|31901
0,0,4.5,0,0,0.554,0.2263|2|4322 4720 4985|6322 6720|dfiji1986 dwgs1972 fgd1986 fiji1986 fijigeodeticdatum1986 gcsfiji1986 gcswgs1972 wgs72 worldgeodeticsystem1972|3143 3460 32201-32360
0,0,1.9,0,0,0.814,-0.38|2|4324 4987|6324|dwgs1972be gcswgs1972be wgs72be wgs72transitbroadcastephemeris|2094 3415 32401-32560
0|0|4326 4327 4329 4979|6326|dwgs1984 gcswgs1984 wgs84 worldgeodeticsystem1984 worldgeodeticsystem1984ensemble|2309-2311 3031-3033 3204-3294 3395 3413 3571-3576 3752 3762 3832 3857 3974-3976 3994-3997 4037-4038 4087 4462 4826 5041-5042 5223 5523 5842 5921-5940 6075-6093 6115-6124 6703 6720 6722 6932-6933 7755-7787 8035-8036 8857-8859 9191 9354 9680 32601-32667 32701-900913
-381.788,-57.501,-256.673|1|4472 4475|1037|cadastre1997 dcadastre1997 gcscadastre1997|5879
-255,-15,71|10|4601|6601|antigua1943 dantigua1943 gcsantigua1943|2001
725,685,536|10|4602|6602|ddominica1945 dominica1945 gcsdominica1945|2002
174,359,365|44|4604|6604|dmontserrat1958 gcsmontserrat1958 montserrat1958 montserrat58|2004
9,183,236|10|4605|6605|dstkitts1955 gcsstkitts1955 stkitts1955|2005
-153,153,307|2|4606|6606|dstlucia1955 gcsstlucia1955 stlucia1955|2006
195.671,332.517,274.607|1|4607|6607|dstvincent1945 gcsstvincent1945 stvincent1945|2007
-162.619,-276.959,-161.764,0.067753,-2.243648,-1.158828,-1.094246|1|4611|6611|dhongkong1980 gcshongkong1980 hk1980 hk80 hongkong1980|2326
0|6|4353 4612 4947|6612|djgd2000 gcsjgd2000 japanesegeodeticdatum2000 jgd2000 jgd2000latlon|2443-2461 3097-3101
-404.78,685.68,45.47|8|4613 4820|6613 6820|dgunungsegara gcsgunungsegara gcsgunungsegarajakarta gunungsegara gunungsegarajakarta p2exc p2exct9 samboja sambojajakarta segara segarajakarta|3000 5329
-404.78,685.68,45.47|1||||2933
-119.4248,-303.65872,-11.00061,1.164298,0.174458,1.096259,3.657065|1|4614|6614|dqnd1995 gcsqnd1995 qatarnationaldatum1995 qnd95|2932
-499,-249,314|44|4615|6615|dportosanto1936 gcsportosanto1936 madeirasebase portosanto portosanto1936|2942
-289,-124,60|44|4616|6616|dselvagemgrande1938 gcsselvagemgrande1938 marcoastro selvagemgrande selvagemgrande1938|2943
-53,3,-47|17|4618|6618|dsouthamerican1969 gcssouthamerican1969 sad69 southamericandatum1969|29168-29170
-48,3,-44|10||||5463
-66.87,4.37,-38.52|5||||5532 29172 29192-29195
-60,-2,-41|8||||29101
-58,0,-44|10||||29171
-48,3,-44|11||||29187
-58,0,-44|11||||29188
-60,-2,-41|9||||29189
-66.87,4.37,-38.52|7||||29190
-66.87,4.37,-38.52|6||||29191
137,248,-430|10|4621|6621|dfortmarigot fortmarigot gcsfortmarigot|2969
-472.29,-5.63,-304.12,0.4362,-0.8374,0.2563,1.8984|1|4622|6622|dsainteanne gcssainteanne guadeloupe1948 sainteanne|2970
-186,230,110|10|4623|6623|centrespatialguyanais1967 csg67 dcsg1967 gcscsg1967 guyanefrancaise|2971 3312
126.93,547.94,130.41,-2.7867,5.1612,-0.8584,13.8227|1|4625|6625|dfortdesaix fortdesaix gcsfortdesaix martinique1938|2973
94,-948,-1262|44|4626|6626|dreunion1947 gcsreunion1947 pitondesneiges reunion1947|3727
162,117,154|10|4628|6628|dtahiti1952 gcstahiti1952 ign1952 tahiti tahiti52|2976
72.51,345.411,79.241,-1.5862,-0.8826,-0.5495,1.3653|1|4629|6629|dtahaa1954 gcstahaa1954 tahaa tahaa54|2977
-382,-59,-262|10|4632|6632|combani1950 dcombani1950 gcscombani1950|2980
137.092,131.66,91.475,-1.9436,-11.5993,-4.3321,-7.4824|1|4633|6633|dign56lifou gcsign56lifou ign56lifou|2981
365,194,166|10|4636|6636|dpetrels1972 gcspetrels1972 petrels1972|
325,154,172|10|4637|6637|dpointegeologieperroud1950 gcspointegeologieperroud1950 perroud1950 pointegeologieperroud1950|
11.363,424.148,373.13|1|4638|6638|dsaintpierreetmiquelon1950 gcssaintpierreetmiquelon1950 saintpierreetmiquelon1950 stpierreetmiquelon1950 stpierremiquelon1950|2987
253,-132,-127|10|4639|6639|dmop78 gcsmop78 mop78 uveashom1978|2988
287.58,177.78,-135.41|2|4641|6641|dign53mare gcsign53mare ign53mare|2995 3172
-13,-348,292|10|4642|6642|dst84iledespins gcsst84iledespins st84iledespins|2996
-480.26,-438.32,-643.429,16.3119,20.1721,-4.0349,-111.7002|1|4643|6643|dst71belep gcsst71belep st71belep|2997
-10.18,-350.43,291.37|1|4644|6644|dnea74noumea gcsnea74noumea nea74noumea|2998 3165-3166
-28,199,5|10|4657|6657|dreykjavik1900 gcsreykjavik1900 reykjavik1900|
-73,46,-86|7|4658|6658|dhjorsey1955 gcshjorsey1955 hjorsey1955|3054-3056
982.6087,552.753,-540.873,6.681626625,-31.61149241,-19.848161,16.805|1|4660|6660|dhelle1954 gcshelle1954 helle1954|3058
-11.64,-348.6,291.98|2|4662|6634|dign72grandeterre gcsign72grandeterre ign72grandeterre mhnc72|3060
-210.502,-66.902,-48.476,2.094,-15.067,-5.817,0.485|1|4663|6663|dportosanto1995 gcsportosanto1995 madeirasebase1995 portosanto1995|3061
-211.939,137.626,58.3,-0.089,0.251,0.079,0.384|1|4664|6664|azoresoriental1995 azoresorientalislands1995 dazoresorientalislands1995 gcsazoresoriental1995|3062
-105.854,165.589,-38.312,-0.003,-0.026,0.024,-0.048|1|4665|6665|azorescentral1995 azorescentralislands1995 dazorescentralislands1995 gcsazorescentral1995|3063
631.392,-66.551,481.442,1.09,-4.445,-4.487,-4.43|1|4666 4904|6666 6904|dlisbon1890 gcslisbon1890 gcslisbon1890lisbon lisbon1890 lisbon1890lisbon|
-86,-98,-119|6|4668|6668|deuropean1979 ed79 europeandatum1979 gcseuropean1979|
175,-38,113|26|4672|6672|chathamislands1971 chathamislandsdatum1971 ci1971 dchathamisland1971 gcschathamisland1971|5518
174.05,-25.49,112.57,0,0,0.554,0.2263|2|4673|6673|chathamislands1979 chathamislandsdatum1979 ci1979 dchathamislands1979 gcschathamislands1979|5519
44.585,-131.212,-39.544|5|4678 4993|6678|dlaonationaldatum1997 gcslao1997 lao1997 laonationaldatum1997|
-80.01,253.26,291.19|1|4679|6679|djouik1961 gcsjouik1961 jouik1961|
283.729,735.942,261.143|1|4682|6682|dgulshan303 gcsgulshan303 gulshan303|3106 9678
-127.62,-67.24,-47.04,-3.068,4.903,1.578,-1.06|1|4683 4995|6683|dphilippinereferencesystem1992 gcsprs1992 modifiedluzondatum newluzon philippinereferencesystem1992 prs92|3121-3125
-133,-321,50|44|4684|6684|dgan1970 gan1970 gcsgan1970|
347.175,1077.618,2623.677,33.9058,-70.6776,9.4013,186.0647|2|4688|6688|dfatuiva1972 fatuiva72 gcsfatuiva1972 mhefo55|3303
410.793,54.542,80.501,-2.5596,-2.3517,-0.6594,17.3218|2|4689|6689|dign63hivaoa gcsign63hivaoa ign63hivaoa|3302
221.597,152.441,176.523,2.403,1.3893,0.884,11.4648|1|4690|6690|dtahiti1979 gcstahiti1979 ign79tahiti tahiti79|3304
218.769,150.75,176.75,3.5231,2.0037,1.288,10.9817|1|4691|6691|dmoorea1987 gcsmoorea1987 moorea87|3305
217.109,86.452,23.711,0.0183,-0.0003,0.007,-0.0093|1|4692|6692|dmaupiti1983 gcsmaupiti1983 maupiti83 mop1983|3306
145,-187,103|10|4698|6698|dkerguelenisland1949 gcskerguelenisland1949 ign1962kerguelen|3336
-770.1,158.4,-498.2|2|4699|6699|dlepouce1934 gcslepouce1934 lepouce1934 lepoucemauritius94 lepoucemauritiuspn94|3337
-79.9,-158,-168.9|5|4701|6701|bascongo1955 dinstitutgeographiqueducongobelge1955 gcsigcb1955 igcb1955 institutgeographiqueducongobelge1955|3339-3342
-146.21,112.63,4.05|5|4706|6706|degyptgulfofsuezs650tl egyptgulfofsuezs650tl gcsegyptgulfofsuezs650tl s650tl|3355
114,-116,-333|44|4707|6707|dternisland1961 gcsternisland1961 ternisland1961|
-491,-22,435|44|4708|6708|cocosislands1965 danna11965 gcsanna11965|
145,75,-272|44|4709|6709|dbeacone1945 gcsbeacone1945 iwojima1945|
-323.65,551.39,-491.22|1|4710|6710|astrodos71 astrodos714 ddos714 gcsdos714 sthelena1971|7877-7878
124,-234,-25|44|4711|6711|dastro1952 gcsastro1952 marcusisland1952|
-205,107,53|44|4712|6712|ascensionisland1958 dascensionisland1958 gcsascensionisland1958|
-77,-128,142|17|4713|6713|ayabellelighthouse dayabelle gcsayabelle|
-127,-769,472|35|4714|6714|bellevue bellevueign dbellevueign gcsbellevueign|
298,-304,-375|26|4716|6716|dcanton1966 gcscanton1966 phoenixislands1966|
-2,151,181|6|4717|6717|capecanaveral dcapecanaveral gcscapecanaveral|
211,147,111|44|4719|6719|deasterisland1967 easterisland1967 gcseasterisland1967|
265.025,384.929,-194.046|7|4721|6721|dfiji1956 fiji1956 gcsfiji1956|3141-3142
-794,119,-298|44|4722|6722|dists0611968 gcsists0611968 southgeorgia1968|
-179.483,-69.379,-27.584,-7.862,8.163,6.042,-13.925|1|4723|6723|dgrandcayman1959 gcgd59 gcsgrandcayman1959 grandcayman1959 grandcaymangeodeticdatum1959|6128
208,-435,-229|44|4724|6724|diegogarcia1969 dists0731969 gcsists0731969|
189,-79,-202|44|4725|6725|djohnstonisland1961 gcsjohnstonisland1961 johnstonatoll1961 johnstonisland1961|
8.853,-52.644,180.304,-0.393,-2.323,2.96,-24.081|1|4726|6726|dlittlecayman1961 gcslittlecayman1961 littlecayman1961 littlecaymangeodeticdatum1961 sigd61 sisterislandsgeodeticdatum1961|6129
403,-81,277|44|4727|6727|dmidway1961 gcsmidway1961 midway1961|
-307,-92,127|44|4728 9403|6728 1286|dpicodelasnieves gcspicodelasnieves picodelasnieves1968 picodelasnieves1984 pn68 pn84|9404-9407
185,165,42|44|4729|6729|dpitcairn1967 gcspitcairn1967 pitcairn1967|3784
170,42,84|44|4730|6730|dsantodos1965 gcssantodos1965 santo1965 santodos|
102,52,-38|6|4732|6732|dwakeeniwetok1960 gcswakeeniwetok1960 marshallislands1960|
276,-57,149|44|4733|6733|dwakeisland1952 gcswakeisland1952 wakeisland1952|
-632,438,-609|44|4734|6734|dtristan1968 gcstristan1968 tristan1968|
647,1777,-1124|44|4735|6735|dkusaie1951 gcskusaie1951 kusaie1951|
260,12,-147|35|4736|6736|ddeceptionisland deceptionisland gcsdeceptionisland|
-156,-271,-189|1|4739|6739|dhongkong196367 gcshongkong196367 hk6367 hongkong196367|
0,0,1.5,0,0,0.076,0|4|4740 4923|6740|dparametropzemp1990 gcspz1990 parametryzemli1990 pz90|
70.995,-335.916,262.898|1|4743|6743|dkarbala1979polservice gcskarbala1979polservice karbala1979 karbala1979polservice|3391-3393 6646
-242.2,-144.9,370.3|30|4744|6744|dnahrwan1934 gcsnahrwan1934 nahrwan1934|3394 7005-7007
612.4,77,440.2,-0.054,0.057,-2.797,2.55|1|4745|6745|drauenberg1983 gcsrd83 rauenbergdatum83 rd83|3398-3399 5668-5669
599.4,72.4,419.2,-0.062,-0.022,-2.723,6.46|1|4746|6746|dpotsdam1983 gcspd83 pd83 potsdamdatum83|3396-3397 5666-5667
51,391,-36|50|4748|6748|dvanualevu1915 gcsvanualevu1915 vanualevu1915 vanualevu1917|
-56.263,16.136,-22.856|1|4750|6750|dst87ouvea gcsst87ouvea st87ouvea|3164
98,390,-22|5|4752|6752|dvitilevu1912 gcsvitilevu1912 vitilevu1912 vitilevu1916|3140
-208.4058,-109.8777,-2.5764|1|4754 4900|6754|dlibyangeodeticdatum2006 gcslgd2006 lgd2006 libyangeodeticdatum2006|3177 3190-3199 3201-3203
-192.873,-39.382,-111.202,-0.00205,-0.0005,0.00335,0.0188|1|4756|6756|dvietnam2000 gcsvn2000 vietnam2000 vn2000|3405-3406 5896-5899 9205-9218
304.5,306.5,-318.1|11|4802|6802|bogota1975bogota gcsbogotabogota|
572.213,85.334,461.94,4.9732,1.529,5.2484,3.5378|1|5228 5229|1052 1055|dsjtsk05 dsjtsk05ferro gcssjtsk05 gcssjtsk05ferro sjtsk05 sjtsk05ferro systemoftheunifiedtrigonometricalcadastralnetwork05 systemoftheunifiedtrigonometricalcadastralnetwork05ferro systmjednotntrigonometrickstkatastrln05 systmjednotntrigonometrickstkatastrln05ferro|
-0.293,766.95,87.713,0.195704,1.695068,3.473016,-0.039338|14|5233|1053|dsrilankadatum1999 gcssld99 sld99 srilankadatum1999|5235
205,96,-98|14|5451|1070|docotepeque1935 gcsocotepeque1935 ocotepeque1935|
213.11,9.37,-74.95|8||||5456-5457 5461-5462
213.11,9.37,-74.95|12||||5459 5559
213.11,9.37,-74.95|9||||5460
-67.35,3.88,-38.22|5|5527|1075|dsouthamericandatum196996 gcssad196996 sad6996 southamericandatum196996|5530-5531 5533-5535 5858-5877
24,-121,-76|1|5560 5561|1077|dukraine2000 gcsukraine2000 ucs2000 ukraine2000|5562-5569 6381-6387 9821 9831-9841 9851-9865
584.9636,107.7175,413.8067,1.1155,0.2824,-3.1384,7.9922|1|5681 5830|1081|dbref dbref2003 dbref2016 ddeutschebahnreferencesystem deutschebahnreferencesystem gcsdbref|5682-5685
293.17,726.18,245.36|1|6207|1111|dnepalnagarkot gcsnepalnagarkot nepal1981|
8.846,-4.394,-1.122,-0.00237,-0.146528,0.130428,0.783926|1|6310 6311|1112|cgrs93 cyprusgeodeticreferencesystem1993 dcyprusgeodeticreferencesystem1993 gcscgrs1993|6312
-235,-110,393|42|6883|1136|bioko dbioko gcsbioko|
-76.269,-16.683,68.562,-6.275,10.536,-4.286,-13.686|1|6892|1138|dsoutheastisland1943 gcssoutheastisland1943 southeastisland1943|6915
-63,176,185|43|6894|1139|dgambia gambia gcsgambia|
-0.077,0.079,0.086|1|7880 7881|1173|sthelenatritan wgs84tritansthelena|7882-7883
485.021,169.465,483.839,7.786342,4.397554,4.102655,0|1|8351|1201|sjtskjtsk03 systemoftheunifiedtrigonometricalcadastralnetworkjtsk03 systmjednotnejtrigonometrickejsietekatastrlnejjtsk03|8353
-93.799,-132.737,-219.073,-1.844,0.648,-6.37,-0.169|3|8694|1217|camacupa2015|
-192.26,65.72,132.08|5|9248|1257|tapiaike|9249-9250
-9.5,122.9,138.2|3|9251|1258|ministeriodemarinanorte|9252
-78.1,101.6,133.3|3|9253|1259|ministeriodemarinasur|9254
0,0,0,-0.008393,0.000749,-0.010276,0|1|9332 9333|1268|kingdomofsaudiarabiageodeticreferenceframe2017 ksagrf17 ksagrf17latlon|9356-9360
`;
