package org.papermath.card;

import java.util.Arrays;
import java.util.List;

/** The words over and before what stands on a card, kept together so that each can be accounted for. */
enum Label {
    PIECES("Pieces and mould"),
    DAYS("Days"),
    SET_UP("Set up"),
    WEIGH("Weigh, soak, cook"),
    BEAT("Beat and dose"),
    VAT("Vat"),
    POUR("Pour"),
    PRESS("Post and press"),
    DRY("Dry"),
    FINISH("Size, cut, fold"),
    COME_OUT("What you should have"),
    FIBRE("Where the fibre goes"),
    WRITE("Write down"),
    LOOK_OUT("Look out"),
    MEASURE("Measure first"),

    ORDERED("ordered"),
    AIM("aim for"),
    SHEETS("sheets to pull"),
    UP("a sheet gives"),
    FINISHED("finished"),
    MOULD("mould"),
    OTHER_MOULD("next best mould"),
    BY_HAND("by hand"),
    BY_ITSELF("by itself"),

    COOKED("should come to"),
    READY("have ready"),
    DIVIDE("take"),
    COLOUR("Judge the colour"),
    ADD("Add to each load"),
    ADD_MIXED("Add to the mixed stock"),
    ADD_PART("Add to this part"),
    STOCK("stock"),

    BEFORE("before the first sheet"),
    VAT_AT("vat at"),
    DIP("dip"),
    RECHARGE("after every"),
    BAIL("bail"),
    GIVE("give"),
    RUN_DOWN("run the vat down"),
    EVEN("by the vat, of the aim"),
    POURED("stock a sheet"),
    TRIAL("whole, dried hot"),
    COUCHED("couched, wet"),
    DRAIN("drains in"),
    MAT("wet on the mould"),
    AT_VAT("all at the vat"),
    READS("reads"),

    POSTS("posts"),
    FELTS("felts"),
    LOAD("press load"),
    GAUGE("gauge shows"),
    PULL("pull at the lever"),
    PRESSURE("on the sheets"),
    HOLD("hold"),
    POST_MASS("a post weighs"),
    POST_HEIGHT("a post is high"),
    PRESSED("a pressed sheet"),
    SOLIDS("solids then"),

    DRYER("in"),
    FILLINGS("fillings"),
    TIME("dry after"),
    LEFT("left in"),
    TIGHTEN("draw it tight after"),
    CHANGES("blotter changes"),
    RELEASED("water given off"),
    TEN("ten sheets"),

    BATH("size bath"),
    DRY_AGAIN("dry again after"),
    BLANK("envelope blank"),
    INSIDE("envelope inside"),
    DRIED("inside once dry"),
    PLAY("play"),
    GOOD("good pieces"),
    COUNTED("counted"),
    ENOUGH("enough for the order"),
    MASS("weight of one"),
    GRAMMAGE("grammage"),
    LEVELS("unknown / making / sheet"),
    INSIDE_TOLERANCE("as agreed"),
    SIZE("size"),
    CALIPER("caliper"),
    PILE("all in a pile"),
    MAILED("in the mail"),
    KEPT("kept in the vat"),
    PUT_BY("stock put by");

    private final String words;

    Label(String words) {
        this.words = words;
    }

    String words() {
        return words;
    }

    static List<String> all() {
        return Arrays.stream(values()).map(Label::words).toList();
    }
}
