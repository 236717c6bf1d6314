package slabfield.quantity;

/** Text that cannot be read as the quantity wanted. The message quotes the text and says what would be right. */
public final class NotAQuantity extends IllegalArgumentException {
    private static final long serialVersionUID = 1L;

    NotAQuantity(String text, String reason) {
        super('"' + text.strip() + "\" " + reason);
    }
}
