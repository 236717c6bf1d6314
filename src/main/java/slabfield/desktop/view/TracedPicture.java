package slabfield.desktop.view;

import java.io.ByteArrayInputStream;
import java.util.Optional;
import javafx.scene.image.Image;
import javafx.scene.image.ImageView;
import javafx.scene.transform.Rotate;
import slabfield.desktop.drawing.Layer;
import slabfield.desktop.viewmodel.Pictures;
import slabfield.desktop.viewmodel.Workbench;
import slabfield.model.Underlay;

/** The picture that a plan is traced from, laid over the map. */
final class TracedPicture {
    private static final double MOST_PIXELS_WIDE = 3000;

    private final Workbench bench;
    private final ViewPort port;
    private final ImageView view = new ImageView();
    private final Rotate turned = new Rotate();
    private Optional<String> shown = Optional.empty();
    private int pixelsWide;
    private int pixelsHigh;

    TracedPicture(Workbench bench, ViewPort port) {
        this.bench = bench;
        this.port = port;
        view.setMouseTransparent(true);
        view.getTransforms().add(turned);
        view.opacityProperty().bind(bench.drawing().layers().pictureOpacity());
        bench.document().scenario().addListener((o, was, is) -> follow());
        bench.document().opened().addListener((o, was, is) -> shown = Optional.empty());
        bench.drawing().layers().shown().addListener((o, was, is) -> place());
        follow();
    }

    ImageView view() {
        return view;
    }

    private void follow() {
        Optional<String> wanted =
                bench.document().scenario().get().plan().underlay().map(Underlay::picture);
        if (!wanted.equals(shown)) {
            shown = wanted;
            view.setImage(null);
            wanted.ifPresent(name -> bench.pictures().load(name, TracedPicture::decoded, this::show));
        }
        place();
    }

    /** Decodes away from the thread of the screen, no larger than is worth showing. */
    private static Image decoded(Pictures.Loaded picture) {
        return new Image(
                new ByteArrayInputStream(picture.bytes()), Math.min(picture.width(), MOST_PIXELS_WIDE), 0, true, true);
    }

    private void show(Pictures.Loaded picture, Image image) {
        pixelsWide = picture.width();
        pixelsHigh = picture.height();
        view.setImage(image);
        place();
    }

    void place() {
        Optional<Underlay> underlay = bench.document().scenario().get().plan().underlay();
        view.setVisible(
                underlay.isPresent() && bench.drawing().layers().shown().get().contains(Layer.UNDERLAY));
        if (underlay.isEmpty() || view.getImage() == null) return;
        Underlay u = underlay.get();
        double scale = port.view().get().scale() * u.pixel(), x = port.x(u.corner()), y = port.y(u.corner());
        view.setFitWidth(scale * pixelsWide);
        view.setFitHeight(scale * pixelsHigh);
        view.setX(x);
        view.setY(y - scale * pixelsHigh);
        turned.setPivotX(x);
        turned.setPivotY(y);
        turned.setAngle(-u.turned());
    }
}
