package offtape.report.measure.channel;
import java.util.*;
import offtape.report.result.*;
class DropX {
  public static void main(String[] a){
    double[][] tones={{44100,3150,-58},{96000,1000,-58},{48000,10000,-58},{48000,3150,-45},{44100,1000,-45},{48000,3150,-300}};
    for(double[] tn: tones) for (double edge: new double[]{0,0.002}) for(double amp: new double[]{0,1.5}){
      double[] depths={3,3.3,4,6,12,20,30}; double[] lens={10,12,20,50,200,500,1000};
      List<LongTone.Damage> ds=new ArrayList<>(); double t=0.8;
      Random r=new Random(5);
      for(double d:depths) for(double l:lens){ 
        // 3 dB-point length l
        double mark=d>3?3:d/2; double place=Math.asin(1-2*mark/d)/(Math.PI/2)*edge/2; // outside offset where loss==mark
        double between=l/1000-2*place;
        ds.add(new LongTone.Damage(ds.size()%2,t+place,between,d,edge)); t+=l/1000+0.45+0.2*r.nextDouble(); }
      LongTone lt=new LongTone((int)tn[0],tn[1],t+1).hiss(tn[2]).wow(0.5,0.7).level(amp,2);
      ds.forEach(lt::damage);
      long t0=System.nanoTime();
      var ret=lt.play(1);
      long t1=System.nanoTime();
      var f=DropoutSearch.find(ret);
      long t2=System.nanoTime();
      int miss=0; double wd=0,wl=0,ws=0; String at="",al=""; Set<Dropout> used=new HashSet<>();
      for(int i=0;i<ds.size();i++){ var d=ds.get(i); double l=lens[i%7];
        Dropout m=null; for(var x:f.dropouts()) if(x.channel().equals(d.channel()==0?"left":"right")&&Math.abs(x.atSeconds()-d.atSeconds())<0.012) m=x;
        if(m==null){miss++; System.out.println("   missed "+d.depthDb()+" dB "+l+" ms"); continue;} used.add(m);
        double ed=m.depthDb()-d.depthDb(), el=m.milliseconds()-l;
        if(Math.abs(ed)>Math.abs(wd)){wd=ed;at=d.depthDb()+"/"+l;} 
        double rel=el/Math.max(1,0.1*l);
        if(Math.abs(rel)>Math.abs(wl)){wl=rel;al=d.depthDb()+"/"+l+" "+el;} }
      System.out.printf("%s edge %.0f amp %.1f: missed %d extra %d worst depth %+.3f (%s) worst length/allow %+.2f (%s)  play %d ms find %d ms%n",Arrays.toString(tn),edge*1000,amp,miss,f.dropouts().size()-used.size(),wd,at,wl,al,(t1-t0)/1000000,(t2-t1)/1000000);
      for (var x: f.dropouts()) if(!used.contains(x)) System.out.println("   extra "+x);
    }
    // none invented
    for(double[] tn: tones) { 
      var f=DropoutSearch.find(new LongTone((int)tn[0],tn[1],65).hiss(-45).wow(0.5,0.5).level(1.5,-2).clicks(100).play(3));
      System.out.println("invented "+f.dropouts()+" "+f.summary());
    }
  }
}
